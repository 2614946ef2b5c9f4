//! Looking at papers in the background: every file is put into the queue, unpacked once, and what it looks
//! like noted at once. One after the other: a photo takes much memory while it is unpacked.

use crate::{
    platform::{
        auth::job::Job,
        error::Result,
        house::House,
        look::{self, Look, Unseen},
        ocr::Unread,
    },
    record::papers::alike::store::{self, Due},
};

/// How many are asked for in one go.
const BATCH: i64 = 20;

/// Looks at all that is due.
pub async fn work(house: &House) -> Result<()> {
    let job = Job::new(house.db.clone());
    loop {
        if store::is_behind(&job.house().await?).await? {
            let write = job.write().await?;
            store::queue(&write).await?;
            write.commit().await?;
        }
        let draws = house.ocr.draws();
        let due = store::due(&job.house().await?, house.clock.now(), draws, BATCH).await?;
        if due.is_empty() {
            return Ok(());
        }
        for it in due {
            if house.ocr.has_ended() {
                return Ok(());
            }
            one(house, &job, &it).await?;
        }
    }
}

async fn one(house: &House, job: &Job, it: &Due) -> Result<()> {
    let seen = look(house, it).await;
    if house.ocr.has_ended() && seen.is_err() {
        return Ok(());
    }
    let write = job.write().await?;
    match seen {
        Ok(look) => store::seen(&write, it, &look).await?,
        Err((says, for_good)) => store::failed(&write, it, says, for_good).await?,
    }
    write.commit().await.map(|_| ())
}

/// What it looks like; or why not, and whether it would be the same another time.
async fn look(house: &House, it: &Due) -> std::result::Result<Look, (&'static str, bool)> {
    let file = house.files.lies(&it.file);
    let unseen = |why: Unseen| (why.says(), true);
    if !it.is_pdf() {
        // A disk that is away for a while is no fault of the file.
        let there = tokio::fs::try_exists(&file).await.unwrap_or(false);
        return match there {
            true => look::of_file(file).await.map_err(unseen),
            false => Err((Unread::NoFile.says(), false)),
        };
    }
    let first = house.ocr.first_page(&file).await.map_err(|why| (why.says(), false))?;
    look::of_bytes(first).await.map_err(unseen)
}
