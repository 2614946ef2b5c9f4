//! What can be typed about a card, and the photos of both sides.

use super::model::{Named, Sides, Sort};
use crate::base::ids::CoverId;
use crate::platform::{
    error,
    files::Files,
    web::form::{FormErrors, FromForm, Reader},
};
use time::Date;

/// What the form sends for "of no cover here".
const NONE: &str = "";

fn named(form: &mut Reader) -> Option<Named> {
    let title = form.needed_line("title", "Enter what the card is called.");
    let (kind, expires_on) = (form.choice::<Sort>("kind"), form.day("expires_on"));
    let cover_id = match form.raw("cover_id") {
        NONE => Some(None),
        sent => sent.parse::<CoverId>().ok().map(Some),
    };
    if cover_id.is_none() {
        form.wrong("cover_id", "Choose from the list which cover it belongs to.");
    }
    Some(Named { title: title?, kind: kind?, cover_id: cover_id?, expires_on })
}

fn sides(form: &mut Reader) -> Option<Sides> {
    let front = form.needed_photo("front", "Choose a photo of the front.");
    let back = form.photo("back");
    Some(Sides { front: front?, back })
}

/// A new card.
pub struct Added {
    pub named: Named,
    pub sides: Sides,
}

impl FromForm for Added {
    fn read(form: &mut Reader) -> Result<Added, FormErrors> {
        let (named, sides) = (named(form), sides(form));
        form.finish(|| Some(Added { named: named?, sides: sides? }))
    }
}

/// The words about it, without the photos.
pub struct Renamed {
    pub named: Named,
    pub version: i64,
}

impl FromForm for Renamed {
    fn read(form: &mut Reader) -> Result<Renamed, FormErrors> {
        let (named, version) = (named(form), form.version());
        form.finish(|| Some(Renamed { named: named?, version }))
    }
}

/// Photographed anew, with the day that stands on the new one.
pub struct Photographed {
    pub sides: Sides,
    pub expires_on: Option<Date>,
    pub version: i64,
}

impl FromForm for Photographed {
    fn read(form: &mut Reader) -> Result<Photographed, FormErrors> {
        let (sides, expires_on, version) = (sides(form), form.day("expires_on"), form.version());
        form.finish(|| Some(Photographed { sides: sides?, expires_on, version }))
    }
}

/// A sum that a form names must be one of a photo that was sent.
pub async fn arrived(files: &Files, sides: Sides) -> error::Result<Sides> {
    let says = "The photo did not arrive. Choose it again.";
    if !files.has(&sides.front).await {
        return Err(FormErrors::at("front", says).into());
    }
    match &sides.back {
        Some(back) if !files.has(back).await => Err(FormErrors::at("back", says).into()),
        _ => Ok(sides),
    }
}
