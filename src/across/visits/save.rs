//! Saving a note: the note, the answers, the changes of medicines, tasks, the next appointment and
//! who should read it, in one write, which also ends the draft. Or nothing: then what was typed is kept
//! as the draft, and the form comes back with it.

use super::{
    contacts, draft, follow,
    form::{Noted, Said, Told, Typing},
    meeting::{self, Met},
    turned,
};
use crate::{
    across::questions::occasion::{self, With},
    base::ids::{AppointmentId, MemberId, VisitId},
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors},
            path::At,
            urls,
        },
    },
    record::{
        questions::{model::Answer, store as questions},
        visits::{
            drafts::{model::Sent, store as drafts},
            model::{Account, Item, Reader, Visit},
            store,
        },
    },
};
use time::Date;

type Changing = Grant<Change<Clinical>>;

pub async fn add(grant: Changing, typing: Form<Typing>, form: Form<Noted>) -> Done {
    either(&grant, typing.parse()?, form).await
}

pub async fn add_of(
    grant: Changing,
    At(id): At<AppointmentId>,
    meeting::Day(on): meeting::Day,
    typing: Form<Typing>,
    form: Form<Noted>,
) -> Done {
    let met = Met::find(&grant.view().await?, (id, on)).await?;
    let typing = typing.parse()?.of(Some(met.key()));
    either(&grant, typing, form).await
}

/// One of the two presses of the form: keep it as a draft, or save the note.
async fn either(grant: &Changing, typing: Typing, form: Form<Noted>) -> Done {
    if !typing.saves {
        return draft::keep(grant, &typing.sent).await;
    }
    let saved = save(grant, &typing.sent, form).await;
    // A form that comes back is kept as well. A repeated one was saved: nothing is begun anew.
    if matches!(saved, Err(Error::Invalid(_) | Error::Stale | Error::Refused(_))) {
        draft::keep(grant, &typing.sent).await?;
    }
    saved
}

async fn save(grant: &Changing, sent: &Sent, form: Form<Noted>) -> Done {
    let noted = form.parse()?;
    FormErrors::unless_come("held_on", noted.told.held_on, grant.today())?;
    let mut write = grant.write().await?;
    let draft = drafts::meant(&write, sent).await?;
    if !sent.knows(draft.as_ref()) {
        return Err(if draft.is_some() { Error::Stale } else { ended().into() });
    }
    let id = written(&mut write, grant, (sent, noted)).await?;
    if let Some(draft) = draft {
        drafts::end(&write, &draft).await?;
    }
    write.commit().await?.then(urls::visit(id)).saying("The note is saved")
}

fn ended() -> FormErrors {
    let says = "This draft was saved or thrown away on another device: look among the visits first. Press again to save this as a note of its own.";
    FormErrors::at("draft", says)
}

async fn written(
    write: &mut Write<Clinical>,
    grant: &Changing,
    (sent, noted): (&Sent, Noted),
) -> Result<VisitId> {
    let today = grant.today();
    let met = match sent.meeting {
        Some(key) => Met::find(write, key).await.ok(),
        None => None,
    };
    let (account, readers) = account(write, noted.told).await?;
    let next = match noted.next {
        Some(next) => {
            let about = (next, met.as_ref(), grant.zone());
            Some(follow::next(write, &account, about).await?)
        }
        None => None,
    };
    let by = (write.member(), write.at());
    let visit = Visit::new(write.person(), sent.meeting, account, by).leading_to(next);
    let visit = Visit { id: store::add(write, &visit).await?, ..visit };
    said(write, &visit, (noted.answers, today)).await?;
    for it in noted.turned {
        turned::turn(write, &visit, it, today).await?;
    }
    for it in noted.started {
        turned::start(write, &visit, it, today).await?;
    }
    for it in noted.tests {
        follow::test(write, &visit, it).await?;
    }
    for it in noted.follow_ups {
        follow::follow_up(write, &visit, it).await?;
    }
    for member in readers {
        store::add_reader(write, &Reader::new(visit.person_id, visit.id, member)).await?;
    }
    if let Some(met) = &met {
        meeting::was_kept(write, met).await?;
    }
    Ok(visit.id)
}

/// The note itself, with the name of the contact and only members who can be there.
async fn account(write: &Write<Clinical>, told: Told) -> Result<(Account, Vec<MemberId>)> {
    let (contact, with_whom) = contacts::name(write, (told.contact, told.with_whom), None).await?;
    let known = store::members(write).await?;
    let known = |it: &MemberId| known.iter().any(|(id, _)| id == it);
    let account = Account {
        held_on: told.held_on,
        contact,
        with_whom,
        present: told.present.into_iter().filter(known).collect(),
        others: told.others,
        said: told.said,
        decisions: told.decisions,
    };
    Ok((account, told.readers.into_iter().filter(known).collect()))
}

/// Answers and what was asked go to the questions; what else waited for this one was not reached.
/// Each stands again at the next visit until it is answered.
async fn said(
    write: &mut Write<Clinical>,
    visit: &Visit,
    (answers, today): (Vec<Said>, Date),
) -> Result<()> {
    let with = With::of_visit(write, visit).await?;
    let mut waiting = occasion::waiting(write, &with).await?;
    waiting.retain(|it| !answers.iter().any(|one| one.question == it.id));
    for it in answers {
        let before = questions::find(write, it.question).await?.opened_at(it.version)?;
        let (after, item) = match it.answer {
            Some(answer) => {
                let item = Item::answered(visit, before.id, answer.clone());
                let (by, on) = (visit.with_whom.clone(), visit.held_on);
                (before.answered(Answer { answer, by, on }, today)?, item)
            }
            None => (before.asked(visit.held_on, today)?, Item::carried(visit, before.id, true)),
        };
        questions::save(write, &before, &after).await?;
        store::add_item(write, &item).await?;
    }
    for it in waiting {
        store::add_item(write, &Item::carried(visit, it.id, false)).await?;
    }
    Ok(())
}
