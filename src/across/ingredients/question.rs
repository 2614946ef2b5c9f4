//! Putting an ingredient that stands in several medicines into a question for the pharmacist, and
//! knowing whether someone did.

use super::{
    pages::read,
    together::{Together, Written},
};
use crate::{
    across::questions::made::{Pressed, keep},
    base::text::Note,
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::Done,
        error::Error,
        web::form::Form,
    },
    record::questions::model::{Question, State, Whom, Wording},
};
use time::Date;

pub async fn make(grant: Grant<Change<Clinical>>, form: Form<Pressed>) -> Done {
    let pressed = form.parse()?;
    let write = grant.write().await?;
    let all = read(&write).await?.together(grant.today());
    let one = all.into_iter().find(|it| it.name() == pressed.row).ok_or(Error::NotFound)?;
    let first = one.taken.iter().chain(&one.held).next().ok_or(Error::NotFound)?;
    let wording = Wording {
        words: Note::from(words(&one)),
        for_whom: Whom::Pharmacist,
        clinician: None,
        about: Some(("medicine".to_owned(), first.medicine.id.into())),
    };
    let named: Vec<(&str, i64)> =
        one.taken.iter().chain(&one.held).map(|it| ("medicine", it.medicine.id.into())).collect();
    let by = (write.member(), write.at());
    let new = Question::new(write.person(), wording, by).naming(&named);
    keep(write, &new).await
}

/// The facts as the page has them, and the question.
fn words(one: &Together) -> String {
    let mut lines =
        vec![format!("{} stands in {} medicines. Is that meant?", one.name(), one.medicines())];
    for product in one.taken.iter().chain(&one.held) {
        let held = if product.medicine.is_on_hold() { " (on hold)" } else { "" };
        let parts = product.parts.iter().map(|(words, sum)| format!("{words}: {sum}"));
        let said: Vec<_> = parts.chain(product.unsaid.iter().cloned()).collect();
        lines.push(format!("{}{held}: {}.", product.medicine.title(), said.join("; ")));
    }
    lines.extend(
        one.sum().map(|it| format!("Together, as the schedule and the labels say: {it} in a day.")),
    );
    lines.extend(one.limits.iter().map(|it| format!("{} in 24 hours: {}.", it.most, it.whose)));
    lines.join("\n")
}

/// The question that stands about it: asked since it was written down in the last of them.
pub fn asked<'a>(one: &Together, questions: &'a [Question]) -> Option<&'a Question> {
    let products = || one.taken.iter().chain(&one.held);
    let since = products().filter_map(|it| Some(it.ingredient.as_ref()?.entered_at)).max();
    questions.iter().find(|it| {
        let about = products().any(|of| it.about() == Some(("medicine", of.medicine.id.into())));
        about && it.state != State::LetGo && since.is_none_or(|since| it.entered_at >= since)
    })
}

/// What stands in two medicines that are taken, and no question is about: a line for each.
pub fn unasked(written: &Written, questions: &[Question], today: Date) -> Vec<String> {
    let several = written.together(today).into_iter().filter(|it| it.taken_in() > 1);
    let open = several.filter(|it| asked(it, questions).is_none());
    let says = |it: Together| {
        format!("{} stands in {} medicines: ask the pharmacist", it.name(), it.taken_in())
    };
    open.map(says).collect()
}
