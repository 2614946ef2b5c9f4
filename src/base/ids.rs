//! The ids of everything that is kept, one type each, so that a medicine's id can never be
//! handed over where a member's is wanted.
//!
//! An id that is `Default` (zero) belongs to something not yet kept; the database gives the
//! real one. The literal is the name the id has in an address: `/medicines/{medicine}`.

use std::{fmt, num::ParseIntError, str::FromStr};

/// An id that may stand in an address.
pub trait PathId: FromStr {
    /// Its name between the braces of the route.
    const PARAM: &'static str;
}

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident $param:literal)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[derive(serde::Serialize, sqlx::Type)]
        #[serde(transparent)]
        #[sqlx(transparent)]
        pub struct $name(i64);

        impl PathId for $name {
            const PARAM: &'static str = $param;
        }

        impl FromStr for $name {
            type Err = ParseIntError;
            fn from_str(typed: &str) -> Result<Self, ParseIntError> {
                typed.parse().map($name)
            }
        }

        impl From<i64> for $name {
            fn from(id: i64) -> Self {
                $name(id)
            }
        }

        // Templates hand ids over by reference.
        impl From<&$name> for $name {
            fn from(id: &$name) -> $name {
                *id
            }
        }

        impl From<&$name> for i64 {
            fn from(id: &$name) -> i64 {
                id.0
            }
        }

        impl From<$name> for i64 {
            fn from(id: $name) -> i64 {
                id.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    )*};
}

ids! {
    /// The one cared for. Zero stands for the house itself: sign-ins, members, set-up.
    PersonId "person"
    /// Someone who signs in.
    MemberId "member"
    /// A member's place in one person's record.
    MembershipId "membership"
    /// A place offered to someone, by a link.
    InvitationId "invitation"
    MedicineId "medicine"
    AllergyId "allergy"
    AllergyAnswerId "answer"
    ContactId "contact"
    ConditionId "condition"
    OperationId "operation"
    /// The answer to one of the two questions that are stated, never concluded.
    StatementId "statement"
    BaselineId "baseline"
    /// What happened, as someone noted it.
    HappeningId "happening"
    /// A paper, in the tray or filed.
    PaperId "paper"
    PaperPageId "page"
    /// What was said of two papers that look alike.
    PaperPairId "pair"
    /// A pile that someone sent.
    ArrivalId "arrival"
    /// A step of a medicine's schedule.
    StepId "step"
    /// What is in a medicine, by its label.
    IngredientId "ingredient"
    /// What was fetched of a medicine from the pharmacy.
    FillId "fill"
    /// How much of a medicine was counted in the house.
    CountId "count"
    /// Days on which a medicine was not taken.
    PauseId "pause"
    /// What holds of every medicine's supply.
    SupplySettingId "setting"
    /// What is to be asked of a pharmacist, a prescriber or a clinician.
    QuestionId "question"
    /// Another list of medicines, laid beside the record.
    SecondListId "list"
    /// A line of it.
    ListLineId "line"
    /// What was decided on a row of the comparison.
    SettledRowId "row"
    /// Two names of one ingredient.
    SameIngredientId "pair"
    /// For which medicines doses are logged.
    LogKeepingId "keeping"
    /// A dose as someone entered it.
    GivenId "given"
    /// Why a medicine was started, stopped, held, resumed or taken differently.
    TurnId "turn"
    /// Who was told of it.
    TellingId "telling"
    /// What a member wants mailed about one record.
    MailChoiceId "choice"
    /// When she wants no mail.
    QuietHoursId "quiet"
    /// A visit to a clinician or a service, once or again and again.
    AppointmentId "appointment"
    /// One of a series that differs from the others.
    OccurrenceId "occurrence"
    /// What was said at a visit.
    VisitId "visit"
    /// A note that someone is typing.
    DraftId "draft"
    /// What is to be done.
    TaskId "task"
    /// What was noticed, in plain words.
    ObservationId "observation"
    /// What was decided, and by which right.
    DecisionId "decision"
    /// What pays for her care: a plan, a program.
    CoverId "cover"
    /// A card of insurance or identity, as it was photographed.
    CardId "card"
    /// A prescription that was refused at the pharmacy counter.
    RefusalId "refusal"
    /// A call about one.
    RefusalCallId "call"
    /// A paper that says what is to be done, or who decides.
    DirectiveId "directive"
    /// The answer where none is listed.
    DirectiveAnswerId "answer"
    /// A copy of one that was given away.
    DirectiveCopyId "copy"
    /// What happened after which one is looked at again.
    DirectiveEventId "event"
    /// One that need not be, after one event.
    DirectiveAsideId "aside"
    /// What someone did for the person: hours, nights, errands, travel.
    CarriedId "carried"
    /// Who wishes to be shown among what each carries.
    WishId "wish"
    /// The secret address of a member's calendar.
    FeedId "feed"
    /// How far a member has confirmed having read.
    ReadMarkId "read"
    /// What the person answered when she was asked about her own record.
    AnswerId "answer"
    /// One item kept from one member's eyes.
    HiddenId "hidden"
    /// A sheet that was printed.
    PrintId "print"
    /// What is to be renewed.
    RenewalId "renewal"
    /// What was said of a paper that is expected.
    PaperWordId "word"
    /// A device on which a member is signed in.
    SessionId "session"
}
