//! The kinds of things the history tells of: what each is called, the words for its fields, and
//! where its page is. Two lists to extend when a capability is added; the third is in `titles`.

use crate::{
    across::{
        calendar::Feed,
        reconciliation::{
            model::{ListLine, SecondList},
            settled::{SameIngredient, SettledRow},
        },
        sheets::print::Print,
        today::read::ReadMark,
    },
    base::change::Audited,
    family::{
        carried::{model::Carried, wish::Wish},
        decisions::model::Decision,
        members::{
            answers::model::Answer,
            invitations::model::Invitation,
            model::{Member, Membership},
        },
        tasks::model::Task,
    },
    platform::web::urls::{self, Address},
    record::{
        allergies::{answer::AllergyAnswer, model::Allergy},
        appointments::{matter::Matter, model::Appointment, occurrence::Occurrence},
        baseline::model::Baseline,
        conditions::model::Condition,
        contacts::model::Contact,
        coverage::{
            cards::model::Card,
            model::Cover,
            refusals::{calls::Call, model::Refusal},
        },
        directives::{
            answer::DirectiveAnswer,
            copies::DirectiveCopy,
            events::{DirectiveAside, DirectiveEvent},
            model::Directive,
        },
        happenings::model::Happening,
        medicines::{
            given::{keeping::LogKeeping, model::Given},
            ingredients::model::Ingredient,
            model::Medicine,
            schedule::model::Step,
            stock::model::{Count, Fill, Pause, Setting},
            turns::model::{Telling, Turn},
        },
        observations::model::Observation,
        operations::model::Operation,
        papers::{alike::pair::PaperPair, model::Paper},
        people::model::Person,
        questions::model::Question,
        renewals::{model::Renewal, word::PaperWord},
        statements::model::Statement,
        visits::model::{Reader, Visit},
    },
};

/// What a kind of thing is called, and the words for its fields.
pub struct Kind {
    pub name: &'static str,
    pub noun: &'static str,
    labels: &'static [(&'static str, &'static str)],
}

impl Kind {
    fn of<T: Audited>(noun: &'static str) -> Kind {
        Kind { name: T::KIND, noun, labels: T::LABELS }
    }

    /// The words for a field; none where it is not told.
    pub fn label(&self, field: &str) -> Option<&'static str> {
        let found = self.labels.iter().find(|(name, _)| *name == field);
        found.map(|(_, label)| *label).filter(|it| !it.is_empty())
    }
}

pub fn kind(name: &str) -> Option<Kind> {
    let all = [
        Kind::of::<Person>("the person's page"),
        Kind::of::<Medicine>("the medicine"),
        Kind::of::<Step>("when and how much of"),
        Kind::of::<Ingredient>("the ingredient"),
        Kind::of::<Fill>("to the supply:"),
        Kind::of::<Count>("to the supply:"),
        Kind::of::<Pause>("to the days without:"),
        Kind::of::<Setting>("how long the pharmacy needs"),
        Kind::of::<Turn>("the change of"),
        Kind::of::<Telling>("that was told:"),
        Kind::of::<LogKeeping>("the log of doses of"),
        Kind::of::<Given>("the dose"),
        Kind::of::<Allergy>("the allergy or intolerance"),
        Kind::of::<AllergyAnswer>("the answer about allergies"),
        Kind::of::<Contact>("the contact"),
        Kind::of::<Cover>("the cover"),
        Kind::of::<Card>("the card"),
        Kind::of::<Refusal>("the refusal at the counter:"),
        Kind::of::<Call>("a call about"),
        Kind::of::<Condition>("the condition"),
        Kind::of::<Operation>("the operation"),
        Kind::of::<Statement>("the answer to"),
        Kind::of::<Baseline>("the page"),
        Kind::of::<Happening>("the note"),
        Kind::of::<Observation>("what was noticed:"),
        Kind::of::<Question>("the question"),
        Kind::of::<Appointment>("the appointment"),
        Kind::of::<Occurrence>("one of the series"),
        Kind::of::<Matter>("what is for the clinical pages of"),
        Kind::of::<Task>("the task"),
        Kind::of::<Carried>("the entry"),
        Kind::of::<Wish>("the wish about"),
        Kind::of::<Paper>("the paper"),
        Kind::of::<PaperPair>("what was said of"),
        Kind::of::<Visit>("the note of the visit"),
        Kind::of::<Reader>("the reader of the note of the visit"),
        Kind::of::<SecondList>("the"),
        Kind::of::<ListLine>("the line"),
        Kind::of::<SettledRow>("the decision on"),
        Kind::of::<SameIngredient>("the pair"),
        Kind::of::<ReadMark>("how far was read"),
        Kind::of::<Decision>("the decision"),
        Kind::of::<Renewal>("what is to be renewed:"),
        Kind::of::<PaperWord>("the answer to"),
        Kind::of::<Directive>("the directive"),
        Kind::of::<DirectiveAnswer>("the answer to"),
        Kind::of::<DirectiveCopy>("the copy of"),
        Kind::of::<DirectiveEvent>("what happened:"),
        Kind::of::<DirectiveAside>("that it was put aside:"),
        Kind::of::<Member>("the member"),
        Kind::of::<Membership>("the place in this record"),
        Kind::of::<Invitation>("the invitation for"),
        Kind::of::<Answer>("the answer to"),
        Kind::of::<Print>("the sheet"),
        Kind::of::<Feed>("an address of the calendar"),
    ];
    all.into_iter().find(|it| it.name == name)
}

/// Where an item's own page is.
pub fn page(kind: &str, item: i64) -> Option<Address> {
    match kind {
        "person" => Some(urls::person()),
        "medicine" => Some(urls::medicine(item)),
        "supply_setting" => Some(urls::supply()),
        "log_keeping" => Some(urls::given()),
        "turn" => Some(urls::turn(item)),
        "given" => Some(urls::given_entry(item)),
        "allergy" => Some(urls::allergy(item)),
        "allergy_answer" => Some(urls::allergies()),
        "contact" => Some(urls::contact(item)),
        "cover" => Some(urls::cover(item)),
        "card" => Some(urls::card(item)),
        "refusal" => Some(urls::refusal(item)),
        "condition" => Some(urls::condition(item)),
        "operation" => Some(urls::operation(item)),
        "statement" => Some(urls::statements()),
        "baseline" => Some(urls::usual()),
        "happening" => Some(urls::happening(item)),
        "appointment" => Some(urls::appointment(item)),
        "observation" => Some(urls::observation(item)),
        "question" => Some(urls::question(item)),
        "carried" => Some(urls::carried_entry(item)),
        "carried_wish" => Some(urls::carried()),
        "task" => Some(urls::task(item)),
        "visit" => Some(urls::visit(item)),
        "paper" => Some(urls::paper(item)),
        "second_list" => Some(urls::second_list(item)),
        "same_ingredient" => Some(urls::second_lists().and("pairs")),
        "decision" => Some(urls::decision(item)),
        "renewal" => Some(urls::renewal(item)),
        "paper_word" => Some(urls::missing_papers()),
        "directive" => Some(urls::directive(item)),
        "directive_answer" => Some(urls::directives()),
        "directive_event" => Some(urls::directive_events()),
        "membership" => Some(urls::place(item)),
        "invitation" => Some(urls::family()),
        "answer" => Some(urls::answer(item)),
        "print" => Some(urls::sheets()),
        _ => None,
    }
}
