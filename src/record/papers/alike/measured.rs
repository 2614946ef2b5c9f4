//! The rule measured on letters that are photographed twice, and on others that look much like them
//! (`tests/outside/papers_alike.py`). KINSHEAF_ALIKE is the folder of the pictures.

use super::{BITS, NEAR, NEAR_ALONE, Said, by};
use crate::platform::{
    look::{self, Look},
    ocr::{Form, Ocr},
};
use serde::Deserialize;
use std::{path::Path, sync::Arc};

#[derive(Deserialize)]
struct Made {
    seed: u64,
    made: String,
    papers: Vec<Paper>,
}

#[derive(Clone, Deserialize)]
struct Paper {
    letter: usize,
    what: String,
    file: String,
    layout: String,
}

struct Seen {
    paper: Paper,
    look: Look,
    said: Option<Said>,
}

/// Two pictures: how far apart their looks are, whether their words were read, and the verdict.
struct Pair {
    kind: &'static str,
    differs: u32,
    read: bool,
    alike: bool,
}

const SAME: &str = "the same letter twice";
const NEXT: &str = "the next of its kind: other day and numbers";
const OTHER: &str = "another letter, same sender and layout";
const LAYOUT: &str = "another sender, same layout";
const FAR: &str = "another layout";

#[tokio::test(flavor = "multi_thread")]
#[ignore = "wants the pictures of tests/outside/papers_alike.py"]
async fn letters_that_are_photographed_twice_are_told_from_others() {
    let folder = std::env::var("KINSHEAF_ALIKE").expect("KINSHEAF_ALIKE");
    let made = std::fs::read(Path::new(&folder).join("alike.json")).expect("alike.json");
    let made: Made = serde_json::from_slice(&made).expect("pictures");
    println!("seed {}: {} pictures, {}", made.seed, made.papers.len(), made.made);
    let seen = seen(&folder, made.papers).await;
    let pairs = pairs(&seen);
    let of = |kind: &'static str| pairs.iter().filter(move |it| it.kind == kind);
    println!("bits of {BITS} that differ (least, a twentieth, half, nineteen twentieths, most):");
    for kind in [SAME, NEXT, OTHER, LAYOUT, FAR] {
        let mut all: Vec<u32> = of(kind).map(|it| it.differs).collect();
        all.sort_unstable();
        let at = |part: usize| all.get((all.len().saturating_sub(1)) * part / 20).unwrap_or(&0);
        let parts = [0, 1, 10, 19, 20].map(|it| format!("{:>3}", at(it))).join(" ");
        println!("  {parts}  {kind} ({} pairs)", all.len());
    }
    println!("called alike: by the look alone within {NEAR}, within {NEAR_ALONE}; by the rule");
    println!("where the words of both were read, where not, all together:");
    for kind in [SAME, NEXT, OTHER, LAYOUT, FAR] {
        let (near, alone) = (
            share(of(kind), |it| it.differs <= NEAR),
            share(of(kind), |it| it.differs <= NEAR_ALONE),
        );
        let read = share(of(kind).filter(|it| it.read), |it| it.alike);
        let not = share(of(kind).filter(|it| !it.read), |it| it.alike);
        let all = share(of(kind), |it| it.alike);
        println!("  {near:>5.1} {alone:>5.1}; {read:>5.1} {not:>5.1} {all:>5.1} %  {kind}");
    }
    let unread = share(seen.iter(), |it| it.said.is_none());
    println!("pictures on which too few words were read: {unread:.1} %");
    for kind in [SAME, NEXT, OTHER, LAYOUT, FAR] {
        assert!(of(kind).count() > 0, "no pair of {kind}");
    }
    assert!(share(of(SAME), |it| it.differs <= NEAR) >= 85.0, "the look loses the same letter");
    assert!(share(of(FAR), |it| it.differs <= NEAR) <= 10.0, "the look does not part layouts");
    assert!(share(of(SAME).filter(|it| it.read), |it| it.alike) >= 70.0, "the same is not found");
    assert!(share(of(OTHER).filter(|it| it.read), |it| it.alike) <= 3.0, "others are called alike");
    assert!(share(of(FAR), |it| it.alike) <= 1.0, "what is far is called alike");
}

async fn seen(folder: &str, papers: Vec<Paper>) -> Vec<Seen> {
    let ocr = Arc::new(Ocr::on(std::env::var_os("PATH").expect("a path")));
    let mut under_way = Vec::new();
    for paper in papers {
        let (ocr, file) = (ocr.clone(), Path::new(folder).join(&paper.file));
        under_way.push(tokio::spawn(async move {
            let words = ocr.read(&file, Form::Picture).await.expect("read").words;
            let look = look::of_file(file).await.expect("seen");
            Seen { paper, look, said: Said::of(&words) }
        }));
    }
    let mut seen = Vec::new();
    for it in under_way {
        seen.push(it.await.expect("no panic"));
    }
    seen
}

fn pairs(seen: &[Seen]) -> Vec<Pair> {
    let each = seen.iter().enumerate();
    let with = each.flat_map(|(at, a)| seen[at + 1..].iter().map(move |b| (a, b)));
    with.map(|(a, b)| {
        let differs = a.look.distance(&b.look);
        let said = a.said.as_ref().zip(b.said.as_ref());
        let (read, alike) = (said.is_some(), by(differs, said).is_some());
        Pair { kind: kind(&a.paper, &b.paper), differs, read, alike }
    })
    .collect()
}

fn kind(a: &Paper, b: &Paper) -> &'static str {
    let itself = |it: &Paper| it.what == "letter" || it.what == "again";
    match (a.letter == b.letter, a.layout == b.layout) {
        (true, _) if itself(a) && itself(b) => SAME,
        (true, _) if a.what == "other" || b.what == "other" => OTHER,
        (true, _) => NEXT,
        (false, true) => LAYOUT,
        (false, false) => FAR,
    }
}

/// In hundredths.
fn share<'a, T: 'a>(all: impl Iterator<Item = &'a T>, is: impl Fn(&T) -> bool) -> f64 {
    let are: Vec<bool> = all.map(is).collect();
    100.0 * are.iter().filter(|it| **it).count() as f64 / are.len().max(1) as f64
}
