//! What names a contact by choosing her, as the reader sees it: each place with what she is there.

use crate::{
    across::directives::ground::Ground,
    base::ids::ContactId,
    platform::{
        auth::area::{Clinical, Directives, Essentials, Papers, Tasks},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        appointments::store as appointments,
        papers::store as papers,
        questions::store::{self as questions, Wanted},
        visits::store as visits,
    },
};

/// "alternate agent: Power of attorney for health care of 12 April 2022"
pub struct Place {
    pub what: &'static str,
    pub title: String,
    pub to: Address,
}

pub async fn of(view: &View<Essentials>, id: ContactId) -> Result<Vec<Place>> {
    let mut all = Vec::new();
    if let Some(view) = view.area::<Directives>() {
        all.extend(in_directives(&Ground::read(&view).await?, id));
    }
    if let Some(view) = view.area::<Papers>() {
        let from = papers::filed(&view).await?.into_iter();
        let from = from.filter(|it| it.contact_id == Some(id) && !it.struck);
        all.extend(from.map(|it| place("from", it.title(), urls::paper(it.id))));
    }
    if let Some(view) = view.area::<Tasks>() {
        all.extend(planned(&view, id).await?);
    }
    if let Some(view) = view.area::<Clinical>() {
        all.extend(asked_and_said(&view, id).await?);
    }
    Ok(all)
}

fn place(what: &'static str, title: String, to: Address) -> Place {
    Place { what, title, to }
}

fn in_directives(ground: &Ground, id: ContactId) -> Vec<Place> {
    let standing = ground.all.iter().filter(|it| !it.struck);
    let own = standing.flat_map(|it| {
        let holds = (it.holder_id == Some(id)).then_some("holds the original");
        let named = it.named().filter(|(_, who)| *who == id).map(|(what, _)| what);
        named.chain(holds).map(|what| place(what, it.title(), urls::directive(it.id)))
    });
    let copies = ground.copies.iter().filter(|it| it.contact_id == Some(id) && !it.struck);
    let copies = copies.map(|it| {
        let title = ground.title(it.directive_id);
        place("has a copy", title, urls::directive(it.directive_id))
    });
    own.chain(copies).collect()
}

async fn planned(view: &View<Tasks>, id: ContactId) -> Result<Vec<Place>> {
    let apart = appointments::occurrences(view, None).await?;
    let all = appointments::list(view).await?.into_iter().filter(|it| !it.struck);
    Ok(all
        .filter_map(|it| {
            let along = it.escort_contact_id == Some(id)
                || apart.iter().any(|one| {
                    one.appointment_id == it.id && one.escort_contact_id == Some(id) && !one.struck
                });
            let what = match it.contact_id == Some(id) {
                true => "with",
                false => along.then_some("goes along")?,
            };
            Some(place(what, it.title.to_string(), urls::appointment(it.id)))
        })
        .collect())
}

async fn asked_and_said(view: &View<Clinical>, id: ContactId) -> Result<Vec<Place>> {
    let asked = questions::list(view, &Wanted::default()).await?.into_iter();
    let asked = asked.filter(|it| it.contact_id == Some(id) && it.waits());
    let noted = visits::list(view).await?.into_iter();
    let noted = noted.filter(|it| it.contact_id == Some(id) && !it.struck);
    Ok(asked
        .map(|it| place("to be asked", it.title(), urls::question(it.id)))
        .chain(noted.map(|it| place("note of a visit", it.title(), urls::visit(it.id))))
        .collect())
}
