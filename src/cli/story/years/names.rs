//! What comes and goes in the years: common generic names with strengths as bottles carry them,
//! conditions, operations. Names only: nobody is told to take anything.

use crate::record::medicines::model::Supply::{
    self, OverTheCounter as Otc, Prescription as Rx, Supplement as Sup,
};

/// A medicine that is taken for some weeks.
pub struct Course {
    pub name: &'static str,
    /// At first, and after its change.
    pub strength: (&'static str, &'static str),
    pub form: &'static str,
    pub times: &'static str,
    pub purpose: &'static str,
    pub supply: Supply,
    pub weeks: i64,
}

const fn course(
    name: &'static str,
    strength: (&'static str, &'static str),
    form: &'static str,
    times: &'static str,
    purpose: &'static str,
    supply: Supply,
    weeks: i64,
) -> Course {
    Course { name, strength, form, times, purpose, supply, weeks }
}

const MORNING: &str = "in the morning";
const BEDTIME: &str = "at bedtime";

#[rustfmt::skip]
pub const COURSES: [Course; 52] = [
    course("Amlodipine", ("2.5 mg", "5 mg"), "tablet", MORNING, "blood pressure", Rx, 44),
    course("Doxycycline", ("100 mg", "100 mg"), "capsule", MORNING, "chest infection", Rx, 2),
    course("Atorvastatin", ("10 mg", "20 mg"), "tablet", BEDTIME, "cholesterol", Rx, 48),
    course("Loratadine", ("10 mg", "10 mg"), "tablet", MORNING, "runny nose", Otc, 9),
    course("Omeprazole", ("20 mg", "40 mg"), "capsule", "before breakfast", "heartburn", Rx, 38),
    course("Senna", ("8.6 mg", "17.2 mg"), "tablet", BEDTIME, "constipation", Otc, 30),
    course("Trimethoprim", ("100 mg", "100 mg"), "tablet", MORNING, "bladder infection", Rx, 2),
    course("Ferrous sulfate", ("325 mg", "325 mg"), "tablet", MORNING, "low iron", Sup, 34),
    course("Gabapentin", ("100 mg", "300 mg"), "capsule", BEDTIME, "leg pain", Rx, 46),
    course("Hydrocortisone", ("1 %", "2.5 %"), "cream", BEDTIME, "itching", Otc, 5),
    course("Sertraline", ("25 mg", "50 mg"), "tablet", MORNING, "mood", Rx, 52),
    course("Guaifenesin", ("400 mg", "400 mg"), "tablet", MORNING, "cough", Otc, 3),
    course("Potassium chloride", ("10 mEq", "20 mEq"), "extended-release tablet", MORNING, "potassium", Rx, 40),
    course("Timolol", ("0.25 %", "0.5 %"), "eye drops", MORNING, "eye pressure", Rx, 42),
    course("Azithromycin", ("250 mg", "250 mg"), "tablet", MORNING, "chest infection", Rx, 1),
    course("Magnesium oxide", ("400 mg", "400 mg"), "tablet", BEDTIME, "cramps", Sup, 22),
    course("Losartan", ("25 mg", "50 mg"), "tablet", MORNING, "blood pressure", Rx, 36),
    course("Prednisone", ("10 mg", "5 mg"), "tablet", MORNING, "a sore wrist", Rx, 4),
    course("Famotidine", ("20 mg", "40 mg"), "tablet", BEDTIME, "heartburn", Rx, 28),
    course("Cyanocobalamin", ("500 mcg", "1000 mcg"), "tablet", MORNING, "vitamin B12", Sup, 40),
    course("Fluconazole", ("150 mg", "150 mg"), "tablet", MORNING, "thrush", Rx, 1),
    course("Spironolactone", ("12.5 mg", "25 mg"), "tablet", MORNING, "swollen legs", Rx, 33),
    course("Diclofenac", ("1 %", "1 %"), "gel", MORNING, "a sore knee", Otc, 12),
    course("Mirtazapine", ("7.5 mg", "15 mg"), "tablet", BEDTIME, "appetite", Rx, 37),
    course("Albuterol", ("90 mcg", "90 mcg"), "inhaler", "when short of breath", "wheezing", Rx, 14),
    course("Simvastatin", ("10 mg", "20 mg"), "tablet", BEDTIME, "cholesterol", Rx, 35),
    course("Ciprofloxacin", ("250 mg", "250 mg"), "tablet", MORNING, "bladder infection", Rx, 1),
    course("Melatonin", ("1 mg", "3 mg"), "tablet", BEDTIME, "sleep", Sup, 18),
    course("Tolterodine", ("1 mg", "2 mg"), "tablet", BEDTIME, "bladder", Rx, 31),
    course("Polyethylene glycol 3350", ("17 g", "17 g"), "powder", MORNING, "constipation", Otc, 26),
    course("Digoxin", ("62.5 mcg", "125 mcg"), "tablet", MORNING, "heart rhythm", Rx, 43),
    course("Clotrimazole", ("1 %", "1 %"), "cream", BEDTIME, "a rash", Otc, 3),
    course("Pantoprazole", ("20 mg", "40 mg"), "tablet", "before breakfast", "heartburn", Rx, 34),
    course("Brimonidine", ("0.1 %", "0.2 %"), "eye drops", MORNING, "eye pressure", Rx, 29),
    course("Allopurinol", ("100 mg", "200 mg"), "tablet", MORNING, "gout", Rx, 39),
    course("Colchicine", ("0.6 mg", "0.6 mg"), "tablet", MORNING, "gout", Rx, 2),
    course("Calcium carbonate", ("500 mg", "600 mg"), "tablet", "with supper", "bones", Sup, 45),
    course("Fluticasone", ("50 mcg", "50 mcg"), "nasal spray", MORNING, "stuffy nose", Otc, 13),
    course("Metformin", ("500 mg", "850 mg"), "tablet", "with supper", "blood sugar", Rx, 41),
    course("Ondansetron", ("4 mg", "4 mg"), "tablet", "when feeling sick", "nausea", Rx, 1),
    course("Diltiazem", ("120 mg", "180 mg"), "extended-release capsule", MORNING, "heart rhythm", Rx, 32),
    course("Lidocaine", ("4 %", "4 %"), "patch", MORNING, "back pain", Otc, 11),
    course("Trazodone", ("25 mg", "50 mg"), "tablet", BEDTIME, "sleep", Rx, 27),
    course("Cetirizine", ("5 mg", "10 mg"), "tablet", BEDTIME, "itching", Otc, 15),
    course("Hydrochlorothiazide", ("12.5 mg", "25 mg"), "tablet", MORNING, "blood pressure", Rx, 30),
    course("Meclizine", ("12.5 mg", "12.5 mg"), "tablet", "when dizzy", "dizziness", Otc, 6),
    course("Duloxetine", ("20 mg", "30 mg"), "capsule", MORNING, "nerve pain", Rx, 36),
    course("Folic acid", ("400 mcg", "1 mg"), "tablet", MORNING, "low folate", Sup, 24),
    course("Pravastatin", ("20 mg", "40 mg"), "tablet", BEDTIME, "cholesterol", Rx, 38),
    course("Triamcinolone", ("0.1 %", "0.1 %"), "ointment", BEDTIME, "eczema", Rx, 4),
    course("Docusate", ("100 mg", "100 mg"), "capsule", BEDTIME, "constipation", Otc, 20),
    course("Carboxymethylcellulose", ("0.5 %", "1 %"), "eye drops", MORNING, "dry eyes", Otc, 35),
];

/// A condition and for how many weeks it stands.
pub const ILLNESSES: [(&str, i64); 12] = [
    ("Chest infection", 4),
    ("High cholesterol", 60),
    ("Low iron", 36),
    ("Sprained wrist", 7),
    ("Heartburn", 40),
    ("Bladder infection", 3),
    ("Shingles", 9),
    ("Low mood", 50),
    ("Gout", 30),
    ("Cataract, left eye", 20),
    ("Dizziness", 8),
    ("Eczema of the hands", 25),
];

/// What was done, and what was put in.
pub const OPERATIONS: [(&str, &str); 8] = [
    ("Cataract of the right eye removed", "lens"),
    ("A mole removed from the back", ""),
    ("Two molars taken out", ""),
    ("Cataract of the left eye removed", "lens"),
    ("Broken wrist set", "plate"),
    ("Carpal tunnel released, right hand", ""),
    ("A polyp removed from the bowel", ""),
    ("A skin graft on the shin", ""),
];

/// Substance and reaction.
pub const REACTIONS: [(&str, &str); 6] = [
    ("Adhesive tape", "red, sore skin"),
    ("Iodine contrast", "rash on the arms"),
    ("Walnuts", "itching in the mouth"),
    ("Latex", "itching hands"),
    ("Wool fat", "rash"),
    ("Nickel", "rash below the watch"),
];

/// Who else is phoned: the name, and who it is.
pub const OTHERS: [(&str, &str); 10] = [
    ("Dr Petra Lindqvist", "bone surgeon, Lakeshore Hospital"),
    ("Dr Samuel Abara", "heart doctor"),
    ("Dr Mei Castellan", "eye doctor"),
    ("Dr Noor Haddad", "dentist"),
    ("Superior Hearing", "hearing aids"),
    ("Halvard Lind", "neighbor at 118, has a key"),
    ("Pastor Liv Aune", "St Olaf's, visits on Thursdays"),
    ("Northshore Rides", "rides to appointments"),
    ("Twin Ports Meals", "brings dinner on weekdays"),
    ("Aurora Physical Therapy", "therapist, comes home"),
];
