//! What Bram writes down after the drawer was filed: what has a last day, who renews it, and what
//! Ottoline says of papers that are not there.

use super::{Telling, line, some};
use crate::{
    base::{day::months_after, text::Note},
    platform::{auth::area::Papers, error::Result},
    record::renewals::{
        expected::Fact,
        model::{Entry, Renewal, Takes},
        rule::Rule,
        store,
        word::{Answer, Said},
        word_store as words,
    },
};

impl Telling<'_> {
    pub(super) async fn renewals_written(&self) -> Result<()> {
        self.day(4, (20, 50));
        let passport = self.renewal(Rule::Passport, "Passport", 5, (Some(42), Some(10)));
        self.to_renew(passport, true).await?;
        let premium = self.renewal(
            Rule::CarePremium,
            "Premium of the long-term-care policy",
            1,
            (None, Some(1)),
        );
        self.to_renew(premium, false).await?;
        let walker =
            self.renewal(Rule::Warranty, "Warranty of the stair railing", 14, (None, None));
        self.to_renew(walker, false).await?;
        self.day(4, (21, 15));
        for (about, answer, detail) in [
            (Fact::Veteran.name(), Answer::No, ""),
            (Fact::Driver.name(), Answer::No, "not since the hip"),
            (Fact::Medicare.name(), Answer::Original, ""),
            ("funeral-contract", Answer::RatherNot, "ask again after the winter"),
        ] {
            self.said_of_papers(about, answer, detail).await?;
        }
        Ok(())
    }

    /// Something of the family's own that ends in so many months.
    fn renewal(
        &self,
        rule: Rule,
        title: &str,
        months: i64,
        (issuer_days, form_days): (Option<i64>, Option<i64>),
    ) -> Renewal {
        let every_months = (rule == Rule::CarePremium).then_some(3);
        let note = (rule == Rule::CarePremium)
            .then(|| Note::from("Juno is the one who is told when it is not paid.".to_owned()));
        let takes = Takes { rule, issuer_days, form_days, note };
        let last_on = months_after(self.date(4), months);
        let entry = Entry { title: line(title), last_on, every_months, takes };
        Renewal::new(self.person, entry)
    }

    async fn to_renew(&self, new: Renewal, begun: bool) -> Result<()> {
        let mut write = self.write::<Papers>("Bram").await?;
        let id = store::add(&mut write, &new).await?;
        if let Some(last) = new.last_on.filter(|_| begun) {
            let before = Renewal { id, ..new };
            let today = self.date(4);
            let after = before.begun(last, (write.member(), today), today)?;
            store::save(&mut write, &before, &after).await?;
        }
        write.commit().await.map(|_| ())
    }

    async fn said_of_papers(&self, about: &str, answer: Answer, detail: &str) -> Result<()> {
        let mut write = self.write::<Papers>("Ines").await?;
        let before = words::find(&write, about).await?;
        let (by, on) = (line("Ottoline"), self.date(4));
        let said = Said { answer, detail: some(detail), by, on };
        let after = before.said(said, Fact::named(about), on)?;
        words::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}
