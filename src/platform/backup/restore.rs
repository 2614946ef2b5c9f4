//! Reading a backup into a folder that is not there yet, or is empty.
//!
//! All of it is unpacked and looked through in a folder beside that one. Only what is sound in
//! every respect is renamed into place, in one step; of anything else nothing stays.

use super::{
    DATA, Kept, Listed, MANIFEST, Manifest, Trouble, at, contents::DATABASE, seal, sum, unsound,
};
use crate::{base::clock::Clock, platform::db::Look};
use std::{
    collections::BTreeSet,
    fs::{self, File, OpenOptions},
    io::{self, Read, Seek},
    os::unix::fs::{OpenOptionsExt, PermissionsExt},
    path::{Path, PathBuf},
};
use zip::ZipArchive;

/// No manifest is longer; one that says it is would only fill the memory.
const LONGEST_MANIFEST: u64 = 256 << 20;

/// What becomes of a backup whose record is not sound.
pub enum Unsound {
    Refused,
    /// One false or one changed row must not take every backup away: someone said so explicitly.
    /// The clock says when, for the entry that tells of it.
    Restored(Clock),
}

pub async fn restore(file: &Path, folder: &Path, unsound: Unsound) -> Result<Kept, Trouble> {
    let (parent, folder) = place(folder)?;
    let fresh = tempfile::Builder::new()
        .prefix(".kinsheaf-restore-")
        .permissions(fs::Permissions::from_mode(0o700))
        .tempdir_in(&parent)
        .map_err(at(&parent))?;
    let manifest = checked(file, fresh.path())?;
    let look = Look::at(&fresh.path().join(DATABASE)).await?;
    if look.version != manifest.database {
        let says = "its database is not of the version that its manifest says";
        return Err(Trouble::Altered(says.into()));
    }
    match (look.faults(), unsound) {
        (faults, _) if faults.is_empty() => {}
        (faults, Unsound::Refused) => return Err(Trouble::Unsound(faults)),
        (faults, Unsound::Restored(clock)) => {
            unsound::tell(fresh.path(), clock, &manifest, &faults).await?;
        }
    }
    fs::rename(fresh.path(), &folder).map_err(at(&folder))?;
    let _ = fresh.keep();
    File::open(&parent).and_then(|it| it.sync_all()).map_err(at(&parent))?;
    Ok(Kept { manifest, look })
}

/// Where the folder will be, and the folder that it is in.
fn place(folder: &Path) -> Result<(PathBuf, PathBuf), Trouble> {
    let parent = match fs::canonicalize(folder) {
        Ok(there) => {
            let empty = fs::read_dir(&there).is_ok_and(|mut entries| entries.next().is_none());
            let parent = there.parent().filter(|_| empty);
            let parent = parent.ok_or(Trouble::NotEmpty(folder.display().to_string()))?;
            return Ok((parent.to_owned(), there));
        }
        Err(e) if e.kind() != io::ErrorKind::NotFound => return Err(at(folder)(e)),
        Err(_) => folder.parent().filter(|it| !it.as_os_str().is_empty()).unwrap_or(Path::new(".")),
    };
    let name = folder.file_name().ok_or(Trouble::NotEmpty(folder.display().to_string()))?;
    let parent = parent.canonicalize().map_err(at(parent))?;
    let there = parent.join(name);
    Ok((parent, there))
}

/// Unpacks an archive of which every byte is as it was made. Without its seal an archive is
/// read all the same: to say which file it is that was altered.
fn checked(path: &Path, into: &Path) -> Result<Manifest, Trouble> {
    let mut file = File::open(path).map_err(at(path))?;
    demand_a_backup(&mut file).map_err(at(path))??;
    let sealed = seal::holds(&mut file).map_err(at(path))?;
    match (sealed, unpack(file, into)) {
        (true, outcome) => outcome,
        (false, Err(told @ (Trouble::Altered(_) | Trouble::File(..)))) => Err(told),
        (false, _) => {
            Err(Trouble::Altered("its files are, but not the archive around them".into()))
        }
    }
}

/// It begins as a zip whose first entry is the manifest, and ends with the seal of one.
fn demand_a_backup(file: &mut File) -> io::Result<Result<(), Trouble>> {
    // The fixed 30 bytes of an entry's header, then its name.
    let mut beginning = Vec::new();
    (&*file).take(30 + MANIFEST.len() as u64).read_to_end(&mut beginning)?;
    let zip = beginning.starts_with(b"PK\x03\x04");
    if !zip || !MANIFEST.as_bytes().starts_with(beginning.get(30..).unwrap_or_default()) {
        return Ok(Err(Trouble::NotABackup));
    }
    let whole = seal::is_at_the_end(file)?;
    file.rewind()?;
    Ok(if whole { Ok(()) } else { Err(Trouble::CutShort) })
}

fn unpack(file: File, into: &Path) -> Result<Manifest, Trouble> {
    let damaged = |_| Trouble::Altered("its directory cannot be read".into());
    let mut zip = ZipArchive::new(io::BufReader::new(file)).map_err(damaged)?;
    let mut text = Vec::new();
    let manifest = zip.by_index(0).map_err(damaged)?;
    let read = manifest.take(LONGEST_MANIFEST).read_to_end(&mut text);
    read.map_err(|_| Trouble::Altered("its manifest cannot be read".into()))?;
    let manifest = Manifest::read(&text)?;
    demand_entries(&zip, &manifest)?;
    for (number, listed) in manifest.files.iter().enumerate() {
        let entry = zip.by_index(number + 1).map_err(|_| altered(listed))?;
        unpack_one(entry, listed, into)?;
    }
    for folder in folders(&manifest, into) {
        File::open(&folder).and_then(|it| it.sync_all()).map_err(at(&folder))?;
    }
    Ok(manifest)
}

/// The manifest, then what it lists, in that order, and nothing else.
fn demand_entries<R: Read + Seek>(zip: &ZipArchive<R>, manifest: &Manifest) -> Result<(), Trouble> {
    let listed = manifest.files.iter().map(|it| format!("{DATA}{}", it.path));
    let listed: Vec<String> = std::iter::once(MANIFEST.to_owned()).chain(listed).collect();
    let names = zip.file_names().map(|it| it.map(String::from).unwrap_or_default());
    let names: Vec<String> = names.collect();
    for wanted in &listed {
        if !names.contains(wanted) {
            return Err(Trouble::Altered(format!("{wanted} is missing")));
        }
    }
    match names.iter().zip(&listed).find(|(name, wanted)| name != wanted) {
        Some((name, _)) => Err(Trouble::Altered(format!("{name} is not where it belongs"))),
        None if names.len() > listed.len() => {
            Err(Trouble::Altered(format!("{} is not in its manifest", names[listed.len()])))
        }
        None => Ok(()),
    }
}

/// Every folder that was made, each once.
fn folders(manifest: &Manifest, into: &Path) -> BTreeSet<PathBuf> {
    let above = |path: &str| {
        Path::new(path).ancestors().skip(1).map(|it| into.join(it)).collect::<Vec<_>>()
    };
    manifest.files.iter().flat_map(|it| above(&it.path)).collect()
}

fn unpack_one(entry: impl Read, listed: &Listed, into: &Path) -> Result<(), Trouble> {
    let path = into.join(&listed.path);
    let folder = path.parent().unwrap_or(into);
    fs::create_dir_all(folder).map_err(at(folder))?;
    let file = OpenOptions::new().write(true).create_new(true).mode(0o600).open(&path);
    let file = file.map_err(at(&path))?;
    // One byte more than it should have is enough to see that it is too long.
    let copied = sum::copy(&mut entry.take(listed.size.saturating_add(1)), &file);
    match copied {
        Ok((size, sha256)) if (size, &sha256) == (listed.size, &listed.sha256) => {}
        // What the archive cannot unpack is damaged; all else is the disk's.
        Err(e) if e.raw_os_error().is_some() => return Err(at(&path)(e)),
        _ => return Err(altered(listed)),
    }
    file.sync_all().map_err(at(&path))
}

fn altered(listed: &Listed) -> Trouble {
    Trouble::Altered(format!("{} is not what its manifest says", listed.path))
}
