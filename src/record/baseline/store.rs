//! All the SQL of how the person usually is. It is hidden from no member who sees the essentials.

use super::{daily::Manner, model::Baseline};
use crate::base::{
    change::Change,
    clock::Instant,
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Essentials,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// What is written down, or that nothing was asked yet.
pub async fn find(view: &View<Essentials>) -> Result<Baseline> {
    let person = view.person();
    let found = view.maybe(query_as!(
        Baseline,
        r#"select id, person_id,
            own_words as "own_words: Note", own_words_by as "own_words_by: Line",
            thinking as "thinking: Line", mood as "mood: Line", not_usual as "not_usual: Note",
            voice as "voice: Note", light as "light: Note", touch as "touch: Note",
            names as "names: Note", walking_aid as "walking_aid: Line",
            bathing as "bathing: Manner", bathing_words as "bathing_words: Line",
            dressing as "dressing: Manner", dressing_words as "dressing_words: Line",
            toileting as "toileting: Manner", toileting_words as "toileting_words: Line",
            transferring as "transferring: Manner",
            transferring_words as "transferring_words: Line",
            continence as "continence: Manner", continence_words as "continence_words: Line",
            feeding as "feeding: Manner", feeding_words as "feeding_words: Line",
            said_by as "said_by: Line", said_on as "said_on: Date",
            checked_at as "checked_at: Instant", checked_by as "checked_by: _",
            checked_against as "checked_against: Line", version
        from baseline
        where person_id = ?"#,
        person
    ));
    Ok(found.await?.unwrap_or_else(|| Baseline::not_asked(person)))
}

/// Keeps it: the first one is added, every other is an edit of it.
pub async fn save(write: &mut Write<Essentials>, old: &Baseline, new: &Baseline) -> Result<()> {
    if old.version == 0 {
        return add(write, new).await;
    }
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update baseline set
                own_words = ?, own_words_by = ?, thinking = ?, mood = ?, not_usual = ?,
                voice = ?, light = ?, touch = ?, names = ?, walking_aid = ?, bathing = ?,
                bathing_words = ?, dressing = ?, dressing_words = ?, toileting = ?,
                toileting_words = ?, transferring = ?, transferring_words = ?, continence = ?,
                continence_words = ?, feeding = ?, feeding_words = ?, said_by = ?, said_on = ?,
                checked_at = ?, checked_by = ?, checked_against = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.own_words,
            new.own_words_by,
            new.thinking,
            new.mood,
            new.not_usual,
            new.voice,
            new.light,
            new.touch,
            new.names,
            new.walking_aid,
            new.bathing,
            new.bathing_words,
            new.dressing,
            new.dressing_words,
            new.toileting,
            new.toileting_words,
            new.transferring,
            new.transferring_words,
            new.continence,
            new.continence_words,
            new.feeding,
            new.feeding_words,
            new.said_by,
            new.said_on,
            new.checked_at,
            new.checked_by,
            new.checked_against,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

async fn add(write: &mut Write<Essentials>, new: &Baseline) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into baseline (person_id,
                own_words, own_words_by, thinking, mood, not_usual, voice, light, touch, names,
                walking_aid, bathing, bathing_words, dressing, dressing_words, toileting,
                toileting_words, transferring, transferring_words, continence,
                continence_words, feeding, feeding_words, said_by, said_on, checked_at,
                checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?,
                ?, ?)",
            person,
            new.own_words,
            new.own_words_by,
            new.thinking,
            new.mood,
            new.not_usual,
            new.voice,
            new.light,
            new.touch,
            new.names,
            new.walking_aid,
            new.bathing,
            new.bathing_words,
            new.dressing,
            new.dressing_words,
            new.toileting,
            new.toileting_words,
            new.transferring,
            new.transferring_words,
            new.continence,
            new.continence_words,
            new.feeding,
            new.feeding_words,
            new.said_by,
            new.said_on,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    added.await.map(|_| ())
}
