//! The words by which a line of a list is taken apart. Common practice, no source: units, forms
//! and directions as labels in the United States write them.

/// Units of a strength. A unit that is not among them is kept as it stands.
const UNITS: [&str; 17] = [
    "mg", "mcg", "µg", "μg", "ug", "g", "gm", "kg", "ml", "l", "unit", "units", "iu", "meq",
    "mmol", "%", "mcl",
];

/// What a medicine comes as.
const FORMS: [&str; 46] = [
    "tablet",
    "tablets",
    "tab",
    "tabs",
    "capsule",
    "capsules",
    "cap",
    "caps",
    "caplet",
    "caplets",
    "softgel",
    "softgels",
    "drops",
    "solution",
    "suspension",
    "syrup",
    "liquid",
    "elixir",
    "cream",
    "ointment",
    "gel",
    "lotion",
    "foam",
    "patch",
    "patches",
    "inhaler",
    "nebulizer",
    "spray",
    "suppository",
    "suppositories",
    "injection",
    "pen",
    "vial",
    "syringe",
    "powder",
    "packet",
    "packets",
    "lozenge",
    "lozenges",
    "chewable",
    "chewables",
    "gummy",
    "gummies",
    "film",
    "ring",
    "aerosol",
];

/// What stands before a form or for it.
const QUALITIES: [&str; 30] = [
    "er",
    "xr",
    "xl",
    "sr",
    "cr",
    "dr",
    "ec",
    "ir",
    "la",
    "odt",
    "extended-release",
    "delayed-release",
    "immediate-release",
    "sustained-release",
    "slow-release",
    "enteric-coated",
    "film-coated",
    "coated",
    "chewable",
    "oral",
    "ophthalmic",
    "eye",
    "ear",
    "otic",
    "nasal",
    "topical",
    "transdermal",
    "sublingual",
    "disintegrating",
    "effervescent",
];

/// Words with which how it is taken begins.
const HOW_TAKEN: [&str; 52] = [
    "take", "taken", "takes", "use", "apply", "inhale", "inject", "instill", "place", "put",
    "give", "chew", "dissolve", "swallow", "one", "two", "three", "half", "once", "twice", "daily",
    "weekly", "monthly", "nightly", "every", "each", "at", "in", "by", "as", "on", "for", "before",
    "after", "with", "without", "when", "if", "until", "if", "morning", "noon", "evening",
    "bedtime", "po", "bid", "tid", "qid", "qhs", "prn", "times", "drop",
];

/// Doses that are counted: a number before one of them is no strength.
const COUNTED: [&str; 18] = [
    "puff",
    "puffs",
    "spoon",
    "spoons",
    "teaspoon",
    "teaspoons",
    "tablespoon",
    "tablespoons",
    "spray",
    "sprays",
    "dose",
    "doses",
    "time",
    "times",
    "day",
    "days",
    "x",
    "drop",
];

fn among(list: &[&str], word: &str) -> bool {
    let word = word.to_lowercase();
    list.contains(&word.as_str())
}

pub fn is_unit(word: &str) -> bool {
    among(&UNITS, word)
}

/// A unit that is nothing else: a "g" or an "l" may be part of a name.
pub fn sure_unit(word: &str) -> bool {
    is_unit(word) && !among(&["g", "l", "kg"], word)
}

pub fn is_counted(word: &str) -> bool {
    among(&COUNTED, word)
}

pub fn is_form(word: &str) -> bool {
    among(&FORMS, word)
}

pub fn is_quality(word: &str) -> bool {
    among(&QUALITIES, word)
}

pub fn is_how_taken(word: &str) -> bool {
    among(&HOW_TAKEN, word) || among(&COUNTED, word)
}

/// Whether a part of a line, between two marks, says that the medicine was stopped and nothing
/// else: "STOPPED", "stop taking", "discontinued 24 Nov".
pub fn says_stopped(part: &str) -> bool {
    let plain = part.to_lowercase();
    let words: Vec<&str> = plain
        .split(|it: char| !it.is_alphanumeric() && it != '\'')
        .filter(|it| !it.is_empty())
        .collect();
    let allowed = ["taking", "this", "it", "medicine", "medication", "now"];
    match words.split_first() {
        Some((&"stop" | &"discontinue", rest)) => rest.iter().all(|it| allowed.contains(it)),
        Some((&"stopped" | &"discontinued", rest)) => {
            let dated = |it: &&str| it.chars().any(|it| it.is_ascii_digit()) || is_of_a_day(it);
            rest.iter().all(|it| allowed.contains(it) || dated(it))
        }
        _ => false,
    }
}

fn is_of_a_day(word: &str) -> bool {
    word == "on" || is_month(word)
}

pub fn is_month(word: &str) -> bool {
    const MONTHS: [&str; 12] =
        ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
    word.get(..3).is_some_and(|it| among(&MONTHS, it))
}
