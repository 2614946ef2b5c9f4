//! What a card is, and when a new one is to be photographed.

use super::super::{model::Cover, rules};
use crate::audited;
use crate::base::{
    day,
    ids::{CardId, CoverId, MemberId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use std::fmt;
use time::Date;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Sort {
    Insurance,
    Identity,
}

impl Choice for Sort {
    const ALL: &'static [Sort] = &[Sort::Insurance, Sort::Identity];

    fn words(self) -> &'static str {
        match self {
            Sort::Insurance => "a card of insurance",
            Sort::Identity => "a card of identity",
        }
    }
}

impl fmt::Display for Sort {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Sort::Insurance => "insurance",
            Sort::Identity => "identity",
        })
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    pub id: CardId,
    pub person_id: PersonId,
    pub title: Line,
    pub kind: Sort,
    pub cover_id: Option<CoverId>,
    /// The sums of the photos, among the house's files.
    pub front: String,
    pub back: Option<String>,
    pub photographed_on: Date,
    pub photographed_by: MemberId,
    /// The year for which someone said that it stays the same.
    pub same_for: Option<i64>,
    pub expires_on: Option<Date>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Card as "card" {
    title: "name of the card", kind: "kind of card", cover_id: "", front: "", back: "",
    photographed_on: "day of the photo", photographed_by: "", same_for: "stays the same for",
    expires_on: "expires", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// A card as it was typed.
#[derive(Clone, Debug)]
pub struct Named {
    pub title: Line,
    pub kind: Sort,
    pub cover_id: Option<CoverId>,
    pub expires_on: Option<Date>,
}

/// Both sides.
#[derive(Clone, Debug)]
pub struct Sides {
    pub front: String,
    pub back: Option<String>,
}

impl Card {
    pub fn new(
        person_id: PersonId,
        named: Named,
        sides: Sides,
        (by, on): (MemberId, Date),
    ) -> Result<Card> {
        let it = Card {
            id: CardId::default(),
            person_id,
            title: named.title.clone(),
            kind: named.kind,
            cover_id: None,
            front: sides.front.clone(),
            back: None,
            photographed_on: on,
            photographed_by: by,
            same_for: None,
            expires_on: None,
            struck: false,
            struck_reason: None,
            version: 1,
        };
        let expires_on = named.expires_on;
        it.renamed(named).map(|it| it.photographed((sides, expires_on), (by, on)))
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Card> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn renamed(&self, named: Named) -> Result<Card> {
        if named.kind == Sort::Identity && named.cover_id.is_some() {
            let says = "Only a card of insurance belongs to a cover.";
            return Err(FormErrors::at("cover_id", says).into());
        }
        let Named { title, kind, cover_id, expires_on } = named;
        Ok(Card { title, kind, cover_id, expires_on, ..self.clone() })
    }

    /// Photographed anew: what was said of the year before says nothing of the new one.
    pub fn photographed(
        &self,
        (sides, expires_on): (Sides, Option<Date>),
        (photographed_by, photographed_on): (MemberId, Date),
    ) -> Card {
        let Sides { front, back } = sides;
        Card {
            front,
            back,
            photographed_by,
            photographed_on,
            expires_on,
            same_for: None,
            ..self.clone()
        }
    }

    /// Someone looked: it is the same card this year.
    pub fn stays_for(&self, year: i32) -> Card {
        Card { same_for: Some(year.into()), ..self.clone() }
    }

    pub fn struck(&self, reason: Line) -> Card {
        Card { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Card {
        Card { struck: false, struck_reason: None, ..self.clone() }
    }

    /// Whether this year's card is to be photographed: of a cover that is in force and whose plan
    /// year is the calendar year, from the second day of the year.
    pub fn asks_for_new(&self, cover: Option<&Cover>, today: Date) -> bool {
        let year = today.year();
        let asked = rules::medicare().plan_years.asked_from(year).is_some_and(|it| it <= today);
        let of_year = cover.is_some_and(|it| it.begins_in_january() && it.holds_on(today));
        let seen = self.photographed_on.year() >= year || self.same_for == Some(year.into());
        asked && of_year && !seen && !self.struck
    }

    pub fn has_expired(&self, today: Date) -> bool {
        self.expires_on.is_some_and(|it| it < today)
    }

    pub fn expires(&self) -> Option<String> {
        self.expires_on.map(day::words)
    }

    pub fn photographed_day(&self) -> String {
        day::words(self.photographed_on)
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::{kind::Kind, model::Terms, model::samples::*};
    use super::*;
    use time::macros::date;

    fn card(on: Date) -> Card {
        let title = Line::from("Drug plan".to_owned());
        let named =
            Named { title, kind: Sort::Insurance, cover_id: Some(1.into()), expires_on: None };
        Card::new(1.into(), named, sides("a"), (2.into(), on)).expect("a card")
    }

    fn sides(front: &str) -> Sides {
        Sides { front: front.into(), back: None }
    }

    /// A Medicare plan's year begins on 1 January (Medicare.gov; Wisconsin OCI 2024).
    #[test]
    fn the_new_card_is_asked_about_from_the_second_of_january() {
        let (card, plan) = (card(date!(2026 - 11 - 20)), cover(Kind::DrugPlan));
        let asks = |it: &Card, on| it.asks_for_new(Some(&plan), on);
        assert!(!asks(&card, date!(2026 - 12 - 31)) && !asks(&card, date!(2027 - 01 - 01)));
        assert!(asks(&card, date!(2027 - 01 - 02)) && asks(&card, date!(2027 - 08 - 01)));
        let new = card.photographed((sides("b"), None), (3.into(), date!(2027 - 01 - 04)));
        assert!(!asks(&new, date!(2027 - 01 - 04)) && asks(&new, date!(2028 - 01 - 02)));
        let same = card.stays_for(2027);
        assert!(!asks(&same, date!(2027 - 12 - 31)) && asks(&same, date!(2028 - 01 - 02)));
        assert!(!asks(&card.struck(Line::from("x".to_owned())), date!(2027 - 01 - 02)));
    }

    #[test]
    fn a_plan_of_another_year_asks_for_nothing() {
        let (card, on) = (card(date!(2026 - 11 - 20)), date!(2027 - 01 - 02));
        assert!(!card.asks_for_new(Some(&cover(Kind::Supplement)), on));
        assert!(!card.asks_for_new(None, on), "a card that belongs to no cover");
        let ticked = Terms { calendar_year: true, ..terms(Kind::Supplement) };
        let ticked = cover(Kind::Supplement).reworded(ticked).expect("a cover");
        assert!(card.asks_for_new(Some(&ticked), on));
        let over = Terms { until_on: Some(date!(2026 - 12 - 31)), ..terms(Kind::DrugPlan) };
        let over = cover(Kind::DrugPlan).reworded(over).expect("a cover");
        assert!(!card.asks_for_new(Some(&over), on));
    }

    #[test]
    fn it_has_expired_after_its_day() {
        let card = Card { expires_on: Some(date!(2026 - 11 - 25)), ..card(date!(2026 - 11 - 20)) };
        assert!(
            !card.has_expired(date!(2026 - 11 - 25)) && card.has_expired(date!(2026 - 11 - 26))
        );
    }
}
