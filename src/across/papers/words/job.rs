//! Reading papers in the background: every file is put into the queue, read once, and noted at once.
//!
//! What is under way when the program is killed still waits in the queue, and is read again. Two files
//! are read at a time (`platform/ocr`), behind everything else.

use crate::{
    platform::{
        auth::job::Job,
        error::{Error, Result},
        house::House,
        ocr::{Form, Unread},
    },
    record::papers::text::store::{self, Due},
};
use tokio::task::JoinSet;

/// How many are asked for in one go.
const BATCH: i64 = 20;

/// Reads all that is due.
pub async fn work(house: &House) -> Result<()> {
    let job = Job::new(house.db.clone());
    loop {
        if store::is_behind(&job.house().await?).await? {
            let write = job.write().await?;
            store::queue(&write).await?;
            write.commit().await?;
        }
        let reads = (house.ocr.reads(Form::Picture), house.ocr.reads(Form::Pdf));
        let due = store::due(&job.house().await?, house.clock.now(), reads, BATCH).await?;
        if due.is_empty() {
            return Ok(());
        }
        let mut under_way = JoinSet::new();
        for it in due {
            under_way.spawn(one(house.clone(), it));
        }
        while let Some(done) = under_way.join_next().await {
            if !done.map_err(|e| Error::Internal(e.into()))?? {
                return Ok(());
            }
        }
    }
}

/// Whether the house goes on.
async fn one(house: House, it: Due) -> Result<bool> {
    let read = house.ocr.read(&house.files.lies(&it.file), it.form()).await;
    if read == Err(Unread::Ended) {
        return Ok(false);
    }
    let write = Job::new(house.db.clone()).write().await?;
    match read {
        Ok(text) => store::read(&write, &it, &text).await?,
        Err(why) => store::failed(&write, &it, why).await?,
    }
    write.commit().await.map(|_| true)
}
