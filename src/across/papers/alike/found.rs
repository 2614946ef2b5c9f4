//! Which papers look like one, for one reader: only among what she sees, waiting or filed and not struck,
//! of the same person. What was said to be two papers is not found again.

use crate::{
    base::ids::{PaperId, PaperPageId},
    platform::{auth::area::Papers, db::View, error::Result},
    record::papers::{
        alike::{
            self, Said, Why, pair::Answer, pair::PaperPair, pair_store as pairs, store as looks,
            store::PageLook,
        },
        model::Paper,
        store,
        text::store as texts,
    },
};
use std::collections::HashMap;

/// A paper that looks like another, by one page of each.
#[derive(Clone, Debug)]
pub struct Twin {
    pub paper: Paper,
    /// The page of the one that was asked about, and that of the twin.
    pub own: PaperPageId,
    pub page: PaperPageId,
    pub why: Why,
}

/// At most so many are named of one paper.
const MOST: usize = 3;

/// All that is compared, read once for a page.
pub struct Finder {
    papers: Vec<Paper>,
    looks: Vec<PageLook>,
    pairs: Vec<PaperPair>,
    /// The words of files that came near one another.
    said: HashMap<String, Option<Said>>,
}

impl Finder {
    pub async fn read(view: &View<Papers>) -> Result<Finder> {
        let papers = [store::waiting(view).await?, store::filed(view).await?].concat();
        let looks = looks::of(view, &papers).await?;
        Ok(Finder { papers, looks, pairs: pairs::list(view).await?, said: HashMap::new() })
    }

    /// Those that look like this one, the nearest first.
    pub async fn of(&mut self, view: &View<Papers>, id: PaperId) -> Result<Vec<Twin>> {
        let near = self.near(id);
        let mut found: Vec<Twin> = Vec::new();
        for (own, other) in near {
            let said = (self.said(view, &own.file).await?, self.said(view, &other.file).await?);
            let (a, b) = ((&own.look, said.0.as_ref()), (&other.look, said.1.as_ref()));
            let paper = self.paper(other.paper_id);
            if let (Some(why), Some(paper)) = (alike::alike(a, b), paper) {
                found.push(Twin { paper: paper.clone(), own: own.page, page: other.page, why });
            }
        }
        found.sort_by(|a, b| alike::nearer(&a.why, &b.why).then(a.paper.id.cmp(&b.paper.id)));
        let mut named: Vec<Twin> = Vec::new();
        for twin in found {
            if named.iter().all(|it| it.paper.id != twin.paper.id) {
                named.push(twin);
            }
        }
        named.truncate(MOST);
        Ok(named)
    }

    pub async fn named(&mut self, view: &View<Papers>, id: PaperId) -> Result<Vec<Paper>> {
        Ok(self.of(view, id).await?.into_iter().map(|it| it.paper).collect())
    }

    /// Those that this one was struck for, as far as the reader sees them.
    pub fn same(&self, id: PaperId) -> Vec<Paper> {
        let said = self.pairs.iter().filter(|it| it.answer == Answer::Same);
        said.filter_map(|it| self.paper(it.other(id)?)).cloned().collect()
    }

    /// Each page of it with each page of another that is near by its look alone.
    fn near(&self, id: PaperId) -> Vec<(PageLook, PageLook)> {
        let two = |it: &&PaperPair| it.answer == Answer::Two;
        let two: Vec<_> = self.pairs.iter().filter(two).filter_map(|it| it.other(id)).collect();
        let (own, mut others): (Vec<_>, Vec<_>) =
            self.looks.iter().partition(|it| it.paper_id == id);
        others.retain(|it| !two.contains(&it.paper_id));
        let with = |own: &PageLook| {
            let near = others.iter().filter(|it| alike::are_near(&own.look, &it.look));
            near.map(|it| (own.clone(), (*it).clone())).collect::<Vec<_>>()
        };
        own.into_iter().flat_map(with).collect()
    }

    /// The words on the first page of a file.
    async fn said(&mut self, view: &View<Papers>, file: &str) -> Result<Option<Said>> {
        if let Some(said) = self.said.get(file) {
            return Ok(said.clone());
        }
        let words = texts::on_file(view, file).await?;
        let said = words.as_deref().and_then(|it| it.split('\u{c}').next()).and_then(Said::of);
        self.said.insert(file.to_owned(), said.clone());
        Ok(said)
    }

    /// Those that were said to be another paper than this one, as far as the reader sees them.
    pub fn apart(&self, id: PaperId) -> Vec<(&PaperPair, &Paper)> {
        let said = self.pairs.iter().filter(|it| it.answer == Answer::Two);
        let of = |it: &PaperPair| it.other(id).and_then(|other| self.paper(other));
        said.filter_map(|it| Some((it, of(it)?))).collect()
    }

    fn paper(&self, id: PaperId) -> Option<&Paper> {
        self.papers.iter().find(|it| it.id == id)
    }
}
