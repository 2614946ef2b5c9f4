//! One word that was asked for, and everything of the reader's where it stands: in a title, in a
//! text, on a page; whole, or as the beginning of another word.

use super::store;
use crate::platform::{db::View, error::Result, words::Shelf};

/// Where a word stands: ids of leaves or of pages, in order.
#[derive(Clone, Debug, Default)]
pub struct Stands {
    pub whole: Vec<i64>,
    /// The whole ones too.
    pub begun: Vec<i64>,
}

#[derive(Clone, Debug, Default)]
pub struct Word {
    /// As the index spells it.
    pub text: String,
    /// What was typed, where another word is shown for it.
    pub typed: Option<String>,
    pub titles: Stands,
    pub leaves: Stands,
    /// Only pages that the reader may see.
    pub pages: Stands,
}

impl Word {
    pub async fn look<A>(view: &View<A>, shelf: &Shelf, text: &str) -> Result<Word> {
        let (whole, begun) = (whole(text), begun(text));
        let in_title = |question: &str| format!("title : {question}");
        Ok(Word {
            text: text.to_owned(),
            typed: None,
            titles: Stands {
                whole: shelf.matching(&in_title(&whole)).await?,
                begun: shelf.matching(&in_title(&begun)).await?,
            },
            leaves: Stands {
                whole: shelf.matching(&whole).await?,
                begun: shelf.matching(&begun).await?,
            },
            pages: Stands {
                whole: pages(view, shelf, &whole).await?,
                begun: pages(view, shelf, &begun).await?,
            },
        })
    }

    pub fn is_nowhere(&self) -> bool {
        self.count() == 0
    }

    /// In how many places it stands, as the reader sees them.
    pub fn count(&self) -> usize {
        self.leaves.begun.len() + self.pages.begun.len()
    }
}

async fn pages<A>(view: &View<A>, shelf: &Shelf, question: &str) -> Result<Vec<i64>> {
    if shelf.pages.is_empty() {
        return Ok(Vec::new());
    }
    let found = store::matching(view, question).await?;
    Ok(shelf.pages.among(&found).map(|(id, _)| id).collect())
}

/// A word is letters and digits alone, so it holds no quote.
fn whole(word: &str) -> String {
    format!("\"{word}\"")
}

/// One letter begins too much: it counts as a whole word.
fn begun(word: &str) -> String {
    let star = if word.chars().nth(1).is_some() { "*" } else { "" };
    format!("\"{word}\"{star}")
}

/// A question for any of the words: for what is marked in an excerpt.
pub fn any(words: &[Word]) -> String {
    words.iter().map(|it| begun(&it.text)).collect::<Vec<_>>().join(" OR ")
}
