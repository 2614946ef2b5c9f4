//! Ottoline Varga's family in a house of its own: one member of every role, each signed in with a
//! browser by a password of her own.

use super::{Browser, TestHouse};
use kinsheaf::{
    base::{
        ids::{MemberId, PersonId},
        reach::Email,
        text::Line,
        zone::Zone,
    },
    family::members::{
        model::{Member, Membership},
        store as members,
    },
    platform::auth::area::{Essentials, Members, Role},
    record::people::{model::Person, store as people},
};
use time::macros::date;

pub const PASSWORD: &str = "maple bridge lantern oats";

pub struct Family {
    pub house: TestHouse,
    pub person: PersonId,
}

/// Everyone, with the role each has: the name, the role, the zone.
pub const CAST: [(&str, Role, &str); 5] = [
    ("Ottoline", Role::Person, "America/Chicago"),
    ("Ines", Role::Steward, "America/Chicago"),
    ("Bram", Role::Relative, "America/Los_Angeles"),
    ("Delia", Role::Aide, "America/Chicago"),
    ("Rosalind", Role::Reader, "America/New_York"),
];

impl Family {
    pub async fn new() -> Family {
        Family::in_house(TestHouse::new().await).await
    }

    pub async fn in_house(house: TestHouse) -> Family {
        let person = add_person(&house, "Ottoline Varga").await;
        for (name, role, zone) in CAST {
            let member = add_member(&house, name, zone).await;
            place(&house, person, member, role).await;
        }
        Family { house, person }
    }

    /// A browser in which this member is signed in, at the list of records.
    pub async fn browser(&self, name: &str) -> Browser {
        let mut browser = Browser::new(&self.house.app);
        browser.open(&format!("{}/sign-in", self.house.base())).await;
        browser.fill("E-mail", &address(name)).fill("Password", PASSWORD);
        browser.press("Sign in").await.answers(200);
        browser
    }

    /// An address in the record.
    pub fn at(&self, rest: &str) -> String {
        format!("{}/p/{}{rest}", self.house.base(), self.person)
    }
}

pub fn address(name: &str) -> String {
    format!("{}@example.org", name.to_lowercase())
}

pub fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

pub async fn add_person(house: &TestHouse, name: &str) -> PersonId {
    let operator = house.operator();
    let write = operator.write().await.expect("a write");
    let mut own = write.in_record::<Essentials>(0.into(), 0.into()).expect("a record");
    let zone = Zone::parse("America/Chicago").expect("a zone");
    let person = Person::new(line(name), date!(1944 - 03 - 09), zone);
    let id = people::add(&mut own, &person).await.expect("a person");
    write.commit().await.expect("kept");
    id
}

pub async fn add_member(house: &TestHouse, name: &str, zone: &str) -> MemberId {
    let phc = house.house.hasher.hash(accepted()).await;
    let zone = Zone::parse(zone).expect("a zone");
    let member = Member::new(line(name), Email::from(address(name)), zone).with_password(phc);
    let mut write = house.operator().write().await.expect("a write");
    let id = members::add(&mut write, &member).await.expect("a member");
    write.commit().await.expect("kept");
    id
}

pub async fn place(house: &TestHouse, person: PersonId, member: MemberId, role: Role) {
    let write = house.operator().write().await.expect("a write");
    let mut own = write.in_record::<Members>(person, 0.into()).expect("a record");
    let new = Membership::new(person, member, role);
    members::place(&mut own, &new).await.expect("a place");
    write.commit().await.expect("kept");
}

fn accepted() -> kinsheaf::platform::auth::password::Password {
    kinsheaf::platform::auth::password::accept(PASSWORD, &[]).expect("a good password")
}
