//! All the SQL of the person cared for. A record has one person, whose id is the record's own.

use super::{mail::MailSays, model::Person, paper::Paper};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::PersonId,
    text::{Line, Phone},
    zone::Zone,
};
use crate::platform::{
    auth::area::Essentials,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

pub async fn find(view: &View<Essentials>) -> Result<Person> {
    let person = view.person();
    view.one(query_as!(
        Person,
        r#"select id, name as "name: Line", born as "born: Date", zone as "zone: Zone",
            address as "address: Line", language as "language: Line",
            hearing as "hearing: Line", vision as "vision: Line", mobility as "mobility: Line",
            emergency_number as "emergency_number: Phone", poison_line as "poison_line: Phone",
            first_whom as "first_whom: Line", first_number as "first_number: Phone",
            first_said_by as "first_said_by: Line", source as "source: Line",
            paper as "paper: Paper", mail_says as "mail_says: MailSays",
            died_on as "died_on: Date", died_by as "died_by: _",
            died_told_by as "died_told_by: Line", died_undone as "died_undone: Line",
            checked_at as "checked_at: Instant",
            checked_by as "checked_by: _", checked_against as "checked_against: Line", version
        from person
        where id = ?"#,
        person
    ))
    .await
}

/// Begins a record: its id is the new person's.
pub async fn add(write: &mut Write<Essentials>, new: &Person) -> Result<PersonId> {
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into person (name, born, zone, address, language, hearing, vision, mobility,
                emergency_number, poison_line, first_whom, first_number, first_said_by, source,
                paper, mail_says, died_on, died_by, died_told_by, died_undone,
                checked_at, checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            new.name,
            new.born,
            new.zone,
            new.address,
            new.language,
            new.hearing,
            new.vision,
            new.mobility,
            new.emergency_number,
            new.poison_line,
            new.first_whom,
            new.first_number,
            new.first_said_by,
            new.source,
            new.paper,
            new.mail_says,
            new.died_on,
            new.died_by,
            new.died_told_by,
            new.died_undone,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Essentials>, old: &Person, new: &Person) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update person set name = ?, born = ?, zone = ?, address = ?, language = ?,
                hearing = ?, vision = ?, mobility = ?, emergency_number = ?, poison_line = ?,
                first_whom = ?, first_number = ?, first_said_by = ?, source = ?, paper = ?,
                mail_says = ?, died_on = ?, died_by = ?, died_told_by = ?, died_undone = ?,
                checked_at = ?, checked_by = ?, checked_against = ?, version = version + 1
            where id = ? and version = ?",
            new.name,
            new.born,
            new.zone,
            new.address,
            new.language,
            new.hearing,
            new.vision,
            new.mobility,
            new.emergency_number,
            new.poison_line,
            new.first_whom,
            new.first_number,
            new.first_said_by,
            new.source,
            new.paper,
            new.mail_says,
            new.died_on,
            new.died_by,
            new.died_told_by,
            new.died_undone,
            new.checked_at,
            new.checked_by,
            new.checked_against,
            person,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
