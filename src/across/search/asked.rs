//! What was asked for: words, a kind, days; and the same as an address asks it again.

use crate::base::day;
use time::Date;

#[derive(Clone, Debug, Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    pub q: String,
    pub kind: String,
    pub from: String,
    pub to: String,
    pub page: String,
}

impl Asked {
    /// More is not looked at, in characters.
    const MOST: usize = 300;

    pub fn words(&self) -> String {
        self.q.chars().take(Self::MOST).collect()
    }

    pub fn first_day(&self) -> Option<Date> {
        day::parse(&self.from)
    }

    pub fn last_day(&self) -> Option<Date> {
        day::parse(&self.to)
    }

    /// What was typed as a day and is none.
    pub fn unread(&self) -> Option<&str> {
        let days = [(&self.from, self.first_day()), (&self.to, self.last_day())];
        let wrong = days.into_iter().find(|(typed, day)| !typed.trim().is_empty() && day.is_none());
        wrong.map(|(typed, _)| typed.as_str())
    }

    /// The first page is 0.
    pub fn page(&self) -> usize {
        self.page.parse::<usize>().unwrap_or(1).clamp(1, 10_000) - 1
    }

    /// The query of another page of the same.
    pub fn on_page(&self, page: usize) -> String {
        let mut query = form_urlencoded::Serializer::new(String::new());
        let own = [("q", &self.q), ("kind", &self.kind), ("from", &self.from), ("to", &self.to)];
        for (name, value) in own.into_iter().filter(|(_, value)| !value.is_empty()) {
            query.append_pair(name, value);
        }
        query.append_pair("page", &(page + 1).to_string()).finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_is_counted_from_one_and_days_are_read_as_people_write_them() {
        let asked = |page: &str, from: &str| Asked {
            q: "a&b".into(),
            page: page.into(),
            from: from.into(),
            ..Asked::default()
        };
        assert_eq!(asked("3", "").page(), 2);
        for odd in ["", "0", "-1", "x", "99999999999999999999"] {
            assert_eq!(asked(odd, "").page(), 0, "{odd}");
        }
        assert_eq!(asked("1", "9 Mar 2026").first_day(), Some(time::macros::date!(2026 - 03 - 09)));
        assert_eq!(asked("1", "soon").unread(), Some("soon"));
        assert_eq!(asked("1", " ").unread(), None);
        assert_eq!(asked("1", "").on_page(1), "q=a%26b&page=2");
    }
}
