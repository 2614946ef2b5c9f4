//! A program of other people's, run over what a stranger may have made: with so much time, memory and
//! room to write, at the lowest priority, without input, in a folder that goes away afterwards.
//!
//! The limits are set by the shell before it becomes the program, so what the program starts has them too.
//! All of them are one process group and are ended together. Should the house itself be killed, the limit
//! of processor time ends what it leaves behind.

use super::Unread;
use std::{
    ffi::OsStr,
    os::unix::process::CommandExt,
    path::Path,
    process::{Child, Command, Stdio},
    sync::atomic::{AtomicBool, Ordering},
    thread::sleep,
    time::{Duration, Instant},
};

/// How long one run may take: the slowest page that was measured took a tenth of it.
pub(super) const MOST: Duration = Duration::from_secs(120);
/// Its memory, in kilobytes: a page at 300 dots an inch takes a quarter of it.
const MEMORY: &str = "2000000";
/// The largest file that it may write, in blocks of 512 bytes: 64 MB.
const WRITTEN: &str = "131072";
const LOOK: Duration = Duration::from_millis(20);

const LIMITED: &str = r#"ulimit -c 0; ulimit -v "$1" && ulimit -t "$2" && ulimit -f "$3" && shift 3 && exec nice -n 19 "$@""#;

pub(super) fn run(
    (program, arguments): (&Path, &[&str]),
    folder: &Path,
    path: &OsStr,
    ends: &AtomicBool,
) -> Result<(), Unread> {
    within(MOST, (program, arguments), (folder, path), ends)
}

pub(super) fn within(
    most: Duration,
    (program, arguments): (&Path, &[&str]),
    (folder, path): (&Path, &OsStr),
    ends: &AtomicBool,
) -> Result<(), Unread> {
    let began = Instant::now();
    let seconds = most.as_secs().max(1).to_string();
    let mut child = Command::new("/bin/sh")
        .args(["-c", LIMITED, "sh", MEMORY, &seconds, WRITTEN])
        .arg(program)
        .args(arguments)
        .current_dir(folder)
        .env_clear()
        .envs(kept(path))
        .env("HOME", folder)
        .env("TMPDIR", folder)
        .process_group(0)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .map_err(super::broken)?;
    loop {
        match child.try_wait().map_err(super::broken)? {
            Some(how) if how.success() => return Ok(()),
            Some(how) => {
                tracing::warn!(program = %program.display(), %how, "a paper was not read");
                return Err(Unread::Broken);
            }
            None if ends.load(Ordering::SeqCst) => return end(child, Unread::Ended),
            None if began.elapsed() > most => return end(child, Unread::TooLong),
            None => sleep(LOOK),
        }
    }
}

/// What of the house's surroundings a program sees: where programs lie and, where someone has said it,
/// where tesseract's own data lies. More than one thread would take a processor from those at a page.
fn kept(path: &OsStr) -> Vec<(&'static str, std::ffi::OsString)> {
    let data = std::env::var_os("TESSDATA_PREFIX").map(|it| ("TESSDATA_PREFIX", it));
    let path = [path, OsStr::new("/usr/bin:/bin")].join(OsStr::new(":"));
    let own = [("PATH", path), ("LC_ALL", "C".into()), ("OMP_THREAD_LIMIT", "1".into())];
    own.into_iter().chain(data).collect()
}

/// Ends it with all that it started. Its number is still its own: it was not waited for yet.
fn end(mut child: Child, why: Unread) -> Result<(), Unread> {
    let group = format!("-{}", child.id());
    let all =
        Command::new("/bin/sh").args(["-c", r#"kill -s KILL -- "$1""#, "sh", &group]).status();
    if !all.is_ok_and(|it| it.success()) {
        child.kill().map_err(super::broken)?;
    }
    child.wait().map_err(super::broken)?;
    Err(why)
}
