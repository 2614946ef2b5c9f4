//! Making a backup beside a running server.
//!
//! The snapshot of the database comes first, the other files after it: an uploaded file is there
//! before a row speaks of it, so whatever the snapshot speaks of is found. Each file is read
//! twice, since its sum must stand in the manifest before it; one that differs the second time
//! ends the backup. The archive grows as `FILE.part` and gets its name only when it is whole and
//! on the disk.

use super::{
    DATA, Kept, Listed, MANIFEST, Manifest, Trouble, at,
    contents::{self, DATABASE},
    seal, sum,
};
use crate::{
    base::clock::Instant,
    platform::db::{Look, OpenError, Snapshot},
};
use std::{
    fs::{self, File, OpenOptions, TryLockError},
    io::{self, BufWriter, Write},
    os::unix::fs::OpenOptionsExt,
    path::{Path, PathBuf},
};
use zip::{ZipWriter, write::SimpleFileOptions};

/// Makes a backup of a data folder. A record that is not sound is kept all the same, so that it
/// is not lost too: look at `Kept::look`.
pub async fn make(folder: &Path, file: &Path, now: Instant) -> Result<Kept, Trouble> {
    demand_free(folder, file)?;
    let live = folder.join(DATABASE);
    if !live.exists() {
        return Err(OpenError::Missing(live).into());
    }
    let _lock = one_at_a_time(folder)?;
    let snapshot = Snapshot::take(folder).await?;
    let look = Look::at(snapshot.file()).await?;
    let mut sources = vec![(DATABASE.to_owned(), snapshot.file().to_owned())];
    sources.extend(contents::files(folder)?.into_iter().map(|it| (it.clone(), folder.join(it))));
    let manifest = Manifest::of(now, listed(&sources)?);
    let part = Part::begin(file)?;
    write(&part, &manifest, &sources)?;
    part.becomes(file)?;
    Ok(Kept { manifest, look })
}

fn demand_free(folder: &Path, file: &Path) -> Result<(), Trouble> {
    if file.symlink_metadata().is_ok() {
        return Err(Trouble::Taken(file.display().to_string()));
    }
    let parent = parent(file).canonicalize().map_err(at(parent(file)))?;
    let inside = folder.canonicalize().is_ok_and(|folder| parent.starts_with(folder));
    if inside { Err(Trouble::Inside) } else { Ok(()) }
}

fn parent(file: &Path) -> &Path {
    let parent = file.parent().filter(|it| !it.as_os_str().is_empty());
    parent.unwrap_or(Path::new("."))
}

/// Holds the folder itself: a file for it would belong to whoever backed up first, and keep
/// everyone else from it.
fn one_at_a_time(folder: &Path) -> Result<File, Trouble> {
    let lock = File::open(folder).map_err(at(folder))?;
    match lock.try_lock() {
        Ok(()) => Ok(lock),
        Err(TryLockError::WouldBlock) => Err(Trouble::UnderWay),
        Err(TryLockError::Error(e)) => Err(at(folder)(e)),
    }
}

fn listed(sources: &[(String, PathBuf)]) -> Result<Vec<Listed>, Trouble> {
    let one = |(path, source): &(String, PathBuf)| {
        let mut from = File::open(source).map_err(at(source))?;
        let (size, sha256) = sum::copy(&mut from, io::sink()).map_err(at(source))?;
        Ok(Listed { path: path.clone(), size, sha256 })
    };
    sources.iter().map(one).collect()
}

fn write(part: &Part, manifest: &Manifest, sources: &[(String, PathBuf)]) -> Result<(), Trouble> {
    let mut zip = ZipWriter::new(BufWriter::new(&part.file));
    let options = options(manifest.made_at);
    let failed = |e: zip::result::ZipError| at(&part.path)(e.into());
    zip.set_comment(seal::blank()).map_err(failed)?;
    zip.start_file(MANIFEST, options).map_err(failed)?;
    zip.write_all(manifest.text().as_bytes()).map_err(at(&part.path))?;
    for (listed, (path, source)) in manifest.files.iter().zip(sources) {
        // The longer form of an entry is needed from 4 GiB on; packed badly, a little before.
        let options = options.large_file(listed.size > 4_000_000_000);
        zip.start_file(format!("{DATA}{path}"), options).map_err(failed)?;
        let mut from = File::open(source).map_err(at(source))?;
        let (size, sha256) = sum::copy(&mut from, &mut zip).map_err(at(&part.path))?;
        if (size, &sha256) != (listed.size, &listed.sha256) {
            return Err(Trouble::Moved(path.clone()));
        }
    }
    let whole = zip.finish().map_err(failed)?;
    whole.into_inner().map_err(|e| at(&part.path)(e.into_error()))?;
    Ok(())
}

fn options(made_at: Instant) -> SimpleFileOptions {
    let utc = made_at.utc();
    let time = time::PrimitiveDateTime::new(utc.date(), utc.time());
    let options = SimpleFileOptions::default().unix_permissions(0o600);
    options.last_modified_time(time.try_into().unwrap_or_default())
}

/// The archive as long as it is not whole: it goes away unless it becomes the backup.
struct Part {
    path: PathBuf,
    file: File,
}

impl Part {
    fn begin(file: &Path) -> Result<Part, Trouble> {
        let mut name = file.as_os_str().to_owned();
        name.push(".part");
        let path = PathBuf::from(name);
        // What an interrupted backup left behind; the rights of a file are given when it is made.
        let _ = fs::remove_file(&path);
        let file = OpenOptions::new()
            .read(true)
            .write(true)
            .create_new(true)
            .mode(0o600)
            .open(&path)
            .map_err(at(&path))?;
        Ok(Part { path, file })
    }

    /// Seals it, brings it to the disk, and gives it its name, unless that was taken meanwhile.
    fn becomes(mut self, file: &Path) -> Result<(), Trouble> {
        seal::put(&mut self.file).map_err(at(&self.path))?;
        self.file.sync_all().map_err(at(&self.path))?;
        match fs::hard_link(&self.path, file) {
            Ok(()) => {}
            Err(e) if e.kind() == io::ErrorKind::AlreadyExists => {
                return Err(Trouble::Taken(file.display().to_string()));
            }
            // A memory stick may know no second names.
            Err(_) => fs::rename(&self.path, file).map_err(at(file))?,
        }
        let folder = parent(file);
        File::open(folder).and_then(|it| it.sync_all()).map_err(at(folder))
    }
}

impl Drop for Part {
    fn drop(&mut self) {
        let _ = fs::remove_file(&self.path);
    }
}
