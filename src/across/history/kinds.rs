//! The kinds of things the history tells of: what each is called, the words for its fields, and
//! the names of its items. One list to extend when a capability is added.

use crate::{
    across::{
        reconciliation::{
            model::{ListLine, SecondList},
            settled::{SameIngredient, SettledRow},
            settled_store as settled, store as second_lists,
        },
        sheets::{print::Print, store as sheets},
        today::read::ReadMark,
        visibility::{model::Hidden, store as visibility},
    },
    base::change::Audited,
    family::members::{
        answers::{model::Answer, store as answers},
        invitations::{model::Invitation, store as invitations},
        model::{Member, Membership},
        places::store as places,
    },
    platform::{
        auth::area::{Clinical, Essentials, Log, Members},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        allergies::{answer::AllergyAnswer, model::Allergy, store as allergies},
        baseline::{model::Baseline, store as baseline},
        conditions::{model::Condition, store as conditions},
        contacts::{model::Contact, store as contacts},
        happenings::{model::Happening, store as happenings},
        medicines::{
            given::{keeping::LogKeeping, model::Given, store as given},
            ingredients::{model::Ingredient, store as ingredients},
            model::Medicine,
            schedule::{model::Step, store as schedule},
            stock::{
                model::{Count, Fill, Pause, Setting},
                store as stock,
            },
            store as medicines,
            turns::{
                model::{Telling, Turn},
                store as turns,
            },
        },
        operations::{model::Operation, store as operations},
        people::{model::Person, store as people},
        questions::{model::Question, store as questions},
        statements::{model::Statement, store as statements},
    },
};
use std::collections::HashMap;

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
        Kind::of::<Condition>("the condition"),
        Kind::of::<Operation>("the operation"),
        Kind::of::<Statement>("the answer to"),
        Kind::of::<Baseline>("the page"),
        Kind::of::<Happening>("the note"),
        Kind::of::<Question>("the question"),
        Kind::of::<SecondList>("the"),
        Kind::of::<ListLine>("the line"),
        Kind::of::<SettledRow>("the decision on"),
        Kind::of::<SameIngredient>("the pair"),
        Kind::of::<ReadMark>("how far was read"),
        Kind::of::<Member>("the member"),
        Kind::of::<Membership>("the place in this record"),
        Kind::of::<Invitation>("the invitation for"),
        Kind::of::<Answer>("the answer to"),
        Kind::of::<Print>("the sheet"),
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
        "condition" => Some(urls::condition(item)),
        "operation" => Some(urls::operation(item)),
        "statement" => Some(urls::statements()),
        "baseline" => Some(urls::usual()),
        "happening" => Some(urls::happening(item)),
        "question" => Some(urls::question(item)),
        "second_list" => Some(urls::second_list(item)),
        "same_ingredient" => Some(urls::second_lists().and("pairs")),
        "membership" => Some(urls::place(item)),
        "invitation" => Some(urls::family()),
        "answer" => Some(urls::answer(item)),
        "print" => Some(urls::sheets()),
        _ => None,
    }
}

/// An item by its name, with its own page where it has one.
pub struct Thing {
    pub title: String,
    pub page: Option<Address>,
}

/// The names of the items, as the reader may see them: of each kind, each item's.
pub struct Titles {
    items: HashMap<&'static str, HashMap<i64, String>>,
    /// What was ever hidden from someone: later entries tell only what changed.
    hidden: Vec<Hidden>,
}

impl Titles {
    /// Of everything there ever was; of prints, doses and turns, which never end, only these.
    pub async fn read<A>(view: &View<A>, these: &[i64]) -> Result<Titles> {
        let mut titles: HashMap<(&'static str, i64), String> = HashMap::new();
        let mut hidden = Vec::new();
        if let Some(view) = view.area::<Clinical>() {
            let medicines = medicines::titles(&view).await?.into_iter();
            titles.extend(medicines.map(|(id, title)| (("medicine", id.into()), title)));
            let steps = schedule::titles(&view).await?.into_iter();
            titles.extend(steps.map(|(id, title)| (("step", id.into()), title)));
            let contained = ingredients::titles(&view).await?.into_iter();
            titles.extend(contained.map(|(id, title)| (("ingredient", id.into()), title)));
            let supplies = stock::titles(&view).await?.into_iter();
            titles.extend(supplies.map(|(kind, id, title)| ((kind, id), title)));
            let turned = turns::titles(&view, these).await?.into_iter();
            titles.extend(turned.map(|(id, title)| (("turn", id.into()), title)));
            let told = turns::telling_titles(&view, these).await?.into_iter();
            titles.extend(told.map(|(id, title)| (("telling", id.into()), title)));
            let keeping = given::keeping_titles(&view).await?.into_iter();
            titles.extend(keeping.map(|(id, title)| (("log_keeping", id.into()), title)));
            if let Some(view) = view.area::<Log>() {
                let given = given::titles(&view, these).await?.into_iter();
                titles.extend(given.map(|(id, title)| (("given", id.into()), title)));
            }
            let conditions = conditions::titles(&view).await?.into_iter();
            titles.extend(conditions.map(|(id, title)| (("condition", id.into()), title)));
            let operations = operations::titles(&view).await?.into_iter();
            titles.extend(operations.map(|(id, title)| (("operation", id.into()), title)));
            let questions = questions::titles(&view).await?.into_iter();
            titles.extend(questions.map(|(id, title)| (("question", id.into()), title)));
            titles.extend(reconciled(&view).await?);
            let statements = statements::titles(&view).await?.into_iter();
            titles.extend(statements.map(|(id, title)| (("statement", id.into()), title)));
        }
        if let Some(view) = view.area::<Essentials>() {
            let person = people::find(&view).await?;
            let usual = baseline::find(&view).await?.id;
            titles.insert(("baseline", usual.into()), format!("How {} usually is", person.name));
            titles.insert(("person", person.id.into()), person.name.to_string());
            let allergies = allergies::titles(&view).await?.into_iter();
            titles.extend(allergies.map(|(id, title)| (("allergy", id.into()), title)));
            let prints = sheets::titles(&view, these).await?.into_iter();
            titles.extend(prints.map(|(id, title)| (("print", id.into()), title)));
            let contacts = contacts::titles(&view).await?.into_iter();
            titles.extend(contacts.map(|(id, title)| (("contact", id.into()), title)));
        }
        if let Some(view) = view.area::<Log>() {
            let happenings = happenings::titles(&view).await?.into_iter();
            titles.extend(happenings.map(|(id, title)| (("happening", id.into()), title)));
        }
        if let Some(view) = view.area::<Members>() {
            let places = places::titles(&view).await?.into_iter();
            titles.extend(places.map(|(id, title)| (("membership", id.into()), title)));
            let invitations = invitations::titles(&view).await?.into_iter();
            titles.extend(invitations.map(|(id, title)| (("invitation", id.into()), title)));
            hidden = visibility::all(&view).await?;
            if view.may_change() {
                let answers = answers::titles(&view).await?.into_iter();
                titles.extend(answers.map(|(id, title)| (("answer", id.into()), title)));
            }
        }
        let mut items: HashMap<_, HashMap<_, _>> = HashMap::new();
        for ((kind, item), title) in titles {
            items.entry(kind).or_default().insert(item, title);
        }
        Ok(Titles { items, hidden })
    }

    /// An item that the reader sees.
    pub fn thing(&self, kind: &str, item: i64) -> Option<Thing> {
        Some(Thing { title: self.of(kind, item)?.to_owned(), page: page(kind, item) })
    }

    pub fn of(&self, kind: &str, item: i64) -> Option<&str> {
        self.items.get(kind)?.get(&item).map(String::as_str)
    }

    /// What a row of `hidden` hides, and from whom.
    pub fn hidden(&self, row: i64) -> Option<&Hidden> {
        self.hidden.iter().find(|it| i64::from(it.id) == row)
    }

    /// The person's name, where the reader sees the essentials.
    pub fn person(&self) -> Option<&str> {
        self.items.get("person")?.values().next().map(String::as_str)
    }
}

/// What second lists are about; their lines only where there are any.
async fn reconciled(view: &View<Clinical>) -> Result<Vec<((&'static str, i64), String)>> {
    let lists = second_lists::titles(view).await?;
    if lists.is_empty() {
        return Ok(Vec::new());
    }
    let mut titles: Vec<_> =
        lists.into_iter().map(|(id, title)| (("second_list", id.into()), title)).collect();
    let lines = second_lists::line_titles(view).await?.into_iter();
    titles.extend(lines.map(|(id, title)| (("second_list_line", id.into()), title)));
    let rows = settled::row_titles(view).await?.into_iter();
    titles.extend(rows.map(|(id, title)| (("settled_row", id.into()), title)));
    let pairs = settled::pair_titles(view).await?.into_iter();
    titles.extend(pairs.map(|(id, title)| (("same_ingredient", id.into()), title)));
    Ok(titles)
}
