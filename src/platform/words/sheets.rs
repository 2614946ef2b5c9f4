//! The pages of papers that a reader may see, in the order of their ids, as what the index finds is too.

/// A page of a paper: which of the leaves it belongs to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    pub leaf: usize,
    pub place: i64,
}

/// By the id of their text.
#[derive(Clone, Debug, Default)]
pub struct Sheets(Vec<(i64, Sheet)>);

impl Sheets {
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Those of these ids that are hers. Both are in order, so that each is looked at once: a word can stand
    /// on every page.
    pub fn among<'a>(&'a self, ids: &'a [i64]) -> impl Iterator<Item = (i64, Sheet)> + 'a {
        let mut own = self.0.iter().copied().peekable();
        ids.iter().filter_map(move |id| {
            while own.next_if(|it| it.0 < *id).is_some() {}
            own.next_if(|it| it.0 == *id)
        })
    }
}

impl FromIterator<(i64, Sheet)> for Sheets {
    fn from_iter<I: IntoIterator<Item = (i64, Sheet)>>(sheets: I) -> Sheets {
        let mut all: Vec<_> = sheets.into_iter().collect();
        all.sort_unstable_by_key(|it| it.0);
        Sheets(all)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_her_own_pages_count_wherever_the_others_lie() {
        let sheet = |id: i64| (id, Sheet { leaf: 0, place: id });
        let sheets: Sheets = [9, 3, 5].map(sheet).into_iter().collect();
        let among = |ids: &[i64]| sheets.among(ids).map(|it| it.0).collect::<Vec<_>>();
        assert_eq!(among(&[1, 3, 4, 5, 6, 9, 12]), [3, 5, 9]);
        assert_eq!(among(&[2, 8]), [0; 0]);
        assert_eq!(among(&[9]), [9]);
        assert_eq!(Sheets::default().among(&[1, 2]).count(), 0);
        assert!(Sheets::default().is_empty() && !sheets.is_empty());
    }
}
