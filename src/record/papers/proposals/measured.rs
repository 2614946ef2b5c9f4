//! Proposals measured on papers that are made (`tests/outside/papers_made.py`): how many of the words are
//! found, and how often the kind is right after the confirmed ones were filed. Papers that were held out
//! share no layout and no wording with those.
//!
//! KINSHEAF_PAPERS is the folder of the papers; KINSHEAF_KINDS a file for the counts and logarithms, which
//! scikit-learn then reckons with (`tests/outside/kinds.py`). Without tesseract their true text is taken.

use super::{
    super::kind::Kind,
    bayes::{Bayes, Counts},
    dates::{self, Meant},
    kinds::{self, Kinds},
    person::{self, About},
    sender::{self, Sender},
};
use crate::platform::{
    ocr::{Form, Ocr},
    web::form::Choice,
};
use serde::Deserialize;
use std::{collections::HashMap, path::Path, sync::Arc};
use time::macros::date;

#[derive(Deserialize)]
struct Made {
    seed: u64,
    made: String,
    papers: Vec<Paper>,
}

#[derive(Clone, Deserialize)]
struct Paper {
    file: String,
    kind: String,
    confirmed: bool,
    sender: String,
    dated: String,
    template: String,
    text: String,
    #[serde(default)]
    read: String,
}

impl Paper {
    fn kind(&self) -> Kind {
        *Kind::ALL.iter().find(|it| it.words() == self.kind).expect("a kind of ours")
    }
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "wants the papers of tests/outside/papers_made.py"]
async fn papers_that_are_made_are_read_and_their_kinds_proposed() {
    let folder = std::env::var("KINSHEAF_PAPERS").expect("KINSHEAF_PAPERS");
    let made = std::fs::read(Path::new(&folder).join("papers.json")).expect("papers.json");
    let made: Made = serde_json::from_slice(&made).expect("papers");
    let by_eye = std::env::var("KINSHEAF_PAPERS_TEXT").is_err();
    let papers = if by_eye { read(&folder, made.papers).await } else { as_written(made.papers) };
    let (confirmed, held): (Vec<_>, Vec<_>) = papers.iter().partition(|it| it.confirmed);
    let shared = |it: &&&Paper| confirmed.iter().any(|other| other.template == it.template);
    assert_eq!(held.iter().filter(shared).count(), 0, "a template is on both sides");

    println!("seed {}: {} papers, {}", made.seed, papers.len(), made.made);
    let found = shares(&papers);
    println!("words found: {:.1} % (target 90 %)", 100.0 * found);
    let mut whole = Kinds::starting();
    confirmed.iter().for_each(|it| whole.confirm(it.kind(), &it.read));
    let right = |kinds: &Kinds| {
        share(held.iter().copied(), |it| {
            kinds.propose(&it.read).is_some_and(|found| found.kind == it.kind())
        })
    };
    let after = right(&whole);
    println!(
        "kind right of {} held out, after {} confirmed: {:.1} % (target 80 %)",
        held.len(),
        confirmed.len(),
        100.0 * after
    );
    println!("  the commonest kind always: {:.1} %", 100.0 * baseline(&confirmed, &held));
    println!("  our starting words alone: {:.1} %", 100.0 * right(&Kinds::starting()));
    let sure = |it: &Paper| whole.propose(&it.read).filter(|found| found.or.is_none());
    let many = held.iter().filter(|it| sure(it).is_some()).count();
    let well =
        held.iter().filter(|it| sure(it).is_some_and(|found| found.kind == it.kind())).count();
    println!("  said without “or”: {many}, of which right {well}");
    wrong(&whole, &held);
    println!(
        "date right, or both its readings named: {:.1} %; a wrong one filled in: {:.1} %",
        100.0 * share(&papers, dated),
        100.0 * share(&papers, misdated)
    );
    println!(
        "sender right: {:.1} %; her name found: {:.1} %",
        100.0 * share(&papers, from),
        100.0 * share(&papers, hers)
    );
    write_counts(&confirmed, &held);

    let few = papers.len() < 100;
    assert!(found >= 0.9, "too few of the words are found");
    assert!(after > baseline(&confirmed, &held), "no better than always the commonest");
    assert!(few || after >= 0.8, "too few kinds are right");
    assert!(few || share(&papers, misdated) <= 0.05, "too many dates are filled in wrong");
}

async fn read(folder: &str, papers: Vec<Paper>) -> Vec<Paper> {
    let ocr = Arc::new(Ocr::on(std::env::var_os("PATH").expect("a path")));
    let mut reading = Vec::new();
    for paper in papers {
        let (ocr, file) = (ocr.clone(), Path::new(folder).join(&paper.file));
        reading.push(tokio::spawn(async move {
            let form = if paper.file.ends_with(".pdf") { Form::Pdf } else { Form::Picture };
            let text = ocr.read(&file, form).await.expect("read");
            Paper { read: text.words, ..paper }
        }));
    }
    let mut read = Vec::new();
    for it in reading {
        read.push(it.await.expect("no panic"));
    }
    read
}

fn as_written(papers: Vec<Paper>) -> Vec<Paper> {
    papers.into_iter().map(|it| Paper { read: it.text.clone(), ..it }).collect()
}

fn share<'a>(papers: impl IntoIterator<Item = &'a Paper>, is: impl Fn(&Paper) -> bool) -> f64 {
    let are: Vec<bool> = papers.into_iter().map(is).collect();
    are.iter().filter(|it| **it).count() as f64 / are.len() as f64
}

/// Of all words and numbers that stand on them, each as often as it does: how many were read exactly.
fn shares(papers: &[Paper]) -> f64 {
    let (mut all, mut found) = (0, 0);
    for paper in papers {
        let mut read: HashMap<String, usize> = HashMap::new();
        for word in super::tokens::parts(&paper.read) {
            *read.entry(word).or_default() += 1;
        }
        for word in super::tokens::parts(&paper.text) {
            all += 1;
            if let Some(left) = read.get_mut(&word).filter(|it| **it > 0) {
                *left -= 1;
                found += 1;
            }
        }
    }
    f64::from(found) / f64::from(all)
}

fn baseline(confirmed: &[&Paper], held: &[&Paper]) -> f64 {
    let many = |kind: Kind| confirmed.iter().filter(|it| it.kind() == kind).count();
    let commonest = Kind::ALL.iter().copied().max_by_key(|it| many(*it)).expect("kinds");
    share(held.iter().copied(), |it| it.kind() == commonest)
}

fn wrong(kinds: &Kinds, held: &[&Paper]) {
    let mut wrong: HashMap<String, usize> = HashMap::new();
    for it in held {
        let found = kinds.propose(&it.read).map(|it| it.kind);
        if found != Some(it.kind()) {
            let found = found.map_or("nothing".into(), |it| it.to_string());
            *wrong
                .entry(format!("{} ({}) taken for {found}", it.kind, it.template))
                .or_default() += 1;
        }
    }
    let mut wrong: Vec<_> = wrong.into_iter().collect();
    wrong.sort();
    wrong.iter().for_each(|(what, many)| println!("  {many} × {what}"));
}

fn own(it: &Paper) -> Option<Meant> {
    dates::own(&it.read, Some(date!(1944 - 03 - 09)), date!(2026 - 11 - 25)).map(|it| it.meant)
}

fn dated(it: &Paper) -> bool {
    let on = crate::base::day::iso(&it.dated).expect("a day");
    own(it).is_some_and(|found| match found {
        Meant::Day(found) => found == on,
        Meant::Either(a, b) => a == on || b == on,
    })
}

fn misdated(it: &Paper) -> bool {
    matches!(own(it), Some(Meant::Day(_))) && !dated(it)
}

/// With nobody among the contacts: by the letterhead alone.
fn from(it: &Paper) -> bool {
    let not = ["Ottoline Varga".to_owned()];
    let found = sender::of::<i64>(&[], &not, &it.read);
    let wanted = super::tokens::parts(&it.sender);
    matches!(found, Some(Sender::Name { name, .. }) if super::tokens::stand_in(&wanted, &super::tokens::parts(&name)))
}

fn hers(it: &Paper) -> bool {
    person::about("Ottoline Varga", &["Emeric Varga".to_owned()], &it.read) == About::Her
}

/// The counts that were learned from and asked with, and our logarithms.
fn write_counts(confirmed: &[&Paper], held: &[&Paper]) {
    let Ok(file) = std::env::var("KINSHEAF_KINDS") else { return };
    let mut bayes: Bayes<&'static str> = Bayes::default();
    let mut learned: Vec<(&str, Counts)> =
        kinds::starters().map(|(kind, counts)| (kind.words(), counts)).collect();
    learned.extend(confirmed.iter().map(|it| (it.kind().words(), kinds::counts(&it.read))));
    for (label, counts) in &learned {
        bayes.learn(
            Kind::ALL.iter().find(|it| it.words() == *label).expect("a kind").words(),
            counts,
        );
    }
    let asked: Vec<_> = held
        .iter()
        .map(|it| {
            // More than once, as words can stand: the reckoning is of counts.
            let counts = super::bayes::counted(super::tokens::words(&it.read));
            let logs: HashMap<_, _> =
                bayes.held(&counts).into_iter().map(|it| (it.label, it.log)).collect();
            serde_json::json!({ "counts": counts, "logs": logs })
        })
        .collect();
    let all = serde_json::json!({ "learned": learned, "asked": asked });
    std::fs::write(file, all.to_string()).expect("written");
}
