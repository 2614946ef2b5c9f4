//! All the SQL of contacts. A contact that is hidden from the reader is not there.

use super::{hours::Hours, kind::Kind, model::Contact};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::ContactId,
    text::{Email, Line, Note, Phone},
    zone::Zone,
};
use crate::platform::{
    auth::area::Essentials,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as, query_scalar};

/// Every contact that was not struck, in calling order.
pub async fn list(view: &View<Essentials>) -> Result<Vec<Contact>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Contact,
        r#"select id, person_id, name as "name: Line", kind as "kind: Kind", who as "who: Line",
            organization as "organization: Line", phone as "phone: Phone",
            other_phone as "other_phone: Phone", email as "email: Email",
            address as "address: Note", zone as "zone: Zone", hours as "hours: Hours",
            note as "note: Line", source as "source: Line", call_order, struck as "struck: bool",
            struck_reason as "struck_reason: Line", checked_at as "checked_at: Instant",
            checked_by as "checked_by: _", checked_against as "checked_against: Line", version
        from contact
        where person_id = ? and not struck
            and id not in (select item from hidden where kind = 'contact' and member_id = ? and standing)
        order by call_order, id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Essentials>, id: ContactId) -> Result<Contact> {
    let (person, member) = (view.person(), view.member());
    view.one(query_as!(
        Contact,
        r#"select id, person_id, name as "name: Line", kind as "kind: Kind", who as "who: Line",
            organization as "organization: Line", phone as "phone: Phone",
            other_phone as "other_phone: Phone", email as "email: Email",
            address as "address: Note", zone as "zone: Zone", hours as "hours: Hours",
            note as "note: Line", source as "source: Line", call_order, struck as "struck: bool",
            struck_reason as "struck_reason: Line", checked_at as "checked_at: Instant",
            checked_by as "checked_by: _", checked_against as "checked_against: Line", version
        from contact
        where person_id = ? and id = ?
            and id not in (select item from hidden where kind = 'contact' and member_id = ? and standing)"#,
        person,
        id,
        member
    ))
    .await
}

/// The place after every other: also after the struck ones and those hidden from the writer, so
/// that no two contacts ever share a place.
pub async fn last_place(view: &View<Essentials>) -> Result<i64> {
    let person = view.person();
    let last = view.values(query_scalar!(
        r#"select coalesce(max(call_order), 0) as "last!: i64" from contact where person_id = ?"#,
        person
    ));
    Ok(last.await?.pop().unwrap_or(0) + 1)
}

pub async fn add(write: &mut Write<Essentials>, new: &Contact) -> Result<ContactId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into contact (person_id, name, kind, who, organization, phone, other_phone,
                email, address, zone, hours, note, source, call_order, struck, struck_reason,
                checked_at, checked_by, checked_against)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.name,
            new.kind,
            new.who,
            new.organization,
            new.phone,
            new.other_phone,
            new.email,
            new.address,
            new.zone,
            new.hours,
            new.note,
            new.source,
            new.call_order,
            new.struck,
            new.struck_reason,
            new.checked_at,
            new.checked_by,
            new.checked_against
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Essentials>, old: &Contact, new: &Contact) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update contact set name = ?, kind = ?, who = ?, organization = ?, phone = ?,
                other_phone = ?, email = ?, address = ?, zone = ?, hours = ?, note = ?,
                source = ?, call_order = ?, struck = ?, struck_reason = ?, checked_at = ?,
                checked_by = ?, checked_against = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.kind,
            new.who,
            new.organization,
            new.phone,
            new.other_phone,
            new.email,
            new.address,
            new.zone,
            new.hours,
            new.note,
            new.source,
            new.call_order,
            new.struck,
            new.struck_reason,
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

/// The name of every one there ever was, for the history.
pub async fn titles(view: &View<Essentials>) -> Result<Vec<(ContactId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select id as "id: ContactId", name as title from contact
        where person_id = ?
            and id not in (select item from hidden where kind = 'contact' and member_id = ? and standing)"#,
        person,
        member
    ));
    Ok(all.await?.into_iter().map(|it| (it.id, it.title)).collect())
}
