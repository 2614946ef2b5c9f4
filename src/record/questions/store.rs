//! All the SQL of questions.
//!
//! A question that is hidden from the reader is not there; nor is one for a contact or about an item
//! hidden from her, or about one in an area that her place does not reach.

use super::model::{Question, State, Whom, title};
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{MemberId, QuestionId},
    text::{Line, Note},
};
use crate::platform::{
    auth::{
        area::{AreaName, Clinical, Essentials, Role},
        lowered::Lowered,
        policy::{self, Level, Reach},
    },
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Which questions are wanted. Empty: all.
#[derive(Clone, Debug, Default)]
pub struct Wanted {
    pub id: Option<QuestionId>,
    /// Kind and id of the item they are about.
    pub about: Option<(String, i64)>,
}

/// Those that wait in front, of these the ones nobody will ask; then the newest.
pub async fn list(view: &View<Clinical>, wanted: &Wanted) -> Result<Vec<Question>> {
    let (person, member) = (view.person(), view.member());
    let essentials = view.area::<Essentials>().is_some();
    let (kind, item) = wanted.about.clone().unzip();
    view.all(query_as!(
        Question,
        r#"select id, person_id, words as "words: Note", entered_by,
            entered_at as "entered_at: Instant", for_whom as "for_whom: Whom",
            clinician as "clinician: Line", contact_id as "contact_id: _", about_kind, about_item,
            names, owner_id as "owner_id: MemberId", state as "state: State",
            asked_on as "asked_on: Date", answer as "answer: Note",
            answered_by as "answered_by: Line", answered_on as "answered_on: Date",
            let_go_reason as "let_go_reason: Line", ask_order, starter, version
        from question q
        where person_id = ?1 and (?3 is null or id = ?3)
            and (?4 is null or about_kind = ?4 and about_item = ?5)
            and id not in (select item from hidden where kind = 'question' and member_id = ?2 and standing)
            and (contact_id is null or contact_id not in
                (select item from hidden where kind = 'contact' and member_id = ?2 and standing))
            and (about_kind is null
                or (about_kind in ('medicine', 'condition', 'operation') or ?6)
                and not exists (select 1 from hidden x where x.kind = q.about_kind
                    and x.item = q.about_item and x.member_id = ?2 and x.standing))
            and (q.names is null or not exists (select 1 from json_each(q.names) n
                where not (n.value ->> 0 in ('medicine', 'condition', 'second_list') or ?6)
                    or exists (select 1 from hidden x where x.kind = n.value ->> 0
                        and x.item = n.value ->> 1 and x.member_id = ?2 and x.standing)))
        order by state in ('answered', 'let go'), state = 'asked', owner_id is not null, id desc"#,
        person,
        member,
        wanted.id,
        kind,
        item,
        essentials
    ))
    .await
}

pub async fn find(view: &View<Clinical>, id: QuestionId) -> Result<Question> {
    let wanted = Wanted { id: Some(id), about: None };
    list(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Clinical>, new: &Question) -> Result<QuestionId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into question (person_id, words, entered_by, entered_at, for_whom, clinician,
                contact_id, about_kind, about_item, names, owner_id, state, asked_on, answer,
                answered_by, answered_on, let_go_reason, ask_order, starter)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.words,
            new.entered_by,
            new.entered_at,
            new.for_whom,
            new.clinician,
            new.contact_id,
            new.about_kind,
            new.about_item,
            new.names,
            new.owner_id,
            new.state,
            new.asked_on,
            new.answer,
            new.answered_by,
            new.answered_on,
            new.let_go_reason,
            new.ask_order,
            new.starter
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Question, new: &Question) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update question set words = ?, for_whom = ?, clinician = ?, contact_id = ?,
                about_kind = ?, about_item = ?, owner_id = ?, state = ?, asked_on = ?, answer = ?,
                answered_by = ?, answered_on = ?, let_go_reason = ?, ask_order = ?,
                version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.words,
            new.for_whom,
            new.clinician,
            new.contact_id,
            new.about_kind,
            new.about_item,
            new.owner_id,
            new.state,
            new.asked_on,
            new.answer,
            new.answered_by,
            new.answered_on,
            new.let_go_reason,
            new.ask_order,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Those who may ask: the standing members who may change the clinical pages.
pub async fn askers(view: &View<Clinical>) -> Result<Vec<(MemberId, String)>> {
    let person = view.person();
    let all = view.all(query!(
        r#"select m.id as "id: MemberId", m.name, s.role as "role: Role",
            s.lowered as "lowered: String"
        from membership s join member m on m.id = s.member_id
        where s.person_id = ? and s.state = 'standing' order by s.id"#,
        person
    ));
    let may = |role: Role, lowered: String| {
        let reach = Reach { role, lowered: Lowered::from(lowered) };
        policy::allows(Some(reach), AreaName::Clinical, Level::Change)
    };
    let all = all.await?.into_iter().filter(|it| may(it.role, it.lowered.clone()));
    Ok(all.map(|it| (it.id, it.name)).collect())
}

/// The first words of every question there ever was, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(QuestionId, String)>> {
    let all = list(view, &Wanted::default()).await?.into_iter();
    Ok(all.map(|it| (it.id, title(it.words.as_str()))).collect())
}
