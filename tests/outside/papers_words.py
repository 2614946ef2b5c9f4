"""What the made papers say: for each kind two wordings that are confirmed and two that are held out, of other makers.

A wording is a heading, and sentences of which some are drawn. {person}, {day}, {past}, {money}, {number}, {phone} and
{sender} are filled in. Everything is invented; no sentence stands in both halves.
"""

# kind: (how many of 60, senders, confirmed wordings, held-out wordings); a wording is (heading, sentences)
KINDS = {
    "bill or receipt": (9, ["Portage Utilities", "Quarry Street Family Practice", "Birch Lane Electric"], [
        ("Monthly statement", ["Previous balance {money}.", "Payment received, thank you.", "New charges this period {money}.", "Total amount due {money}.", "Please pay by {day}.", "Detach and return the lower portion with your check.", "Account number {number}.", "A late fee is added after the due date.", "Questions about this statement: {phone}."]),
        ("Invoice {number}", ["Office visit, established patient, {past}: {money}.", "Adjustment by your plan: {money}.", "Balance you owe: {money}.", "Payment is due on receipt of this invoice.", "We accept checks and cards.", "Make checks payable to {sender}.", "If you cannot pay the balance at once, ask us for a payment plan.", "Billing office {phone}."]),
    ], [
        ("Your account at a glance", ["Amount due {money} on {day}.", "Last payment {money}, posted {past}.", "Usage charges and taxes {money}.", "To pay by phone dial {phone} and have account {number} ready.", "Balances older than thirty days bear interest.", "You are not enrolled in automatic payment.", "Keep the upper part for your records."]),
        ("Receipt", ["Received from {person}: {money}.", "For: repair call, parts and labor.", "Subtotal {money}, sales tax {money}.", "Total paid by card {money}.", "Nothing further is owed on invoice {number}.", "Thank you for your business.", "Questions: {phone}."]),
    ]),
    "test result": (8, ["Northland Laboratory", "Superior Imaging"], [
        ("Laboratory report", ["Specimen collected {past}.", "Glucose 98 mg/dL, reference range 70 to 99.", "Hemoglobin 12.9 g/dL, reference range 12.0 to 15.5.", "Potassium 4.1 mmol/L within range.", "Creatinine 0.9 mg/dL.", "Results marked H are above the reference range.", "Ordering clinician: Dr Petra Lindqvist.", "Final report, specimen {number}."]),
        ("Imaging report", ["Examination: chest radiograph, two views.", "Comparison: none.", "Findings: the lungs are clear.", "The heart is of normal size.", "No acute fracture is seen.", "Impression: no acute disease.", "Read and signed by the radiologist.", "Accession {number}."]),
    ], [
        ("Results of your blood tests", ["Sample taken on {past}.", "Thyroid stimulating hormone 2.4, normal between 0.4 and 4.5.", "Sodium 139, normal.", "White cell count 6.2, within reference limits.", "Cholesterol 188 mg/dL.", "One value lies outside the normal range and is starred.", "Ask the clinician who ordered the test what it means.", "Report number {number}."]),
        ("Bone density report", ["Technique: scan of the hip and lumbar spine.", "Findings: the T-score of the left hip is minus 1.8.", "Impression: low bone density.", "A repeat examination in two years is suggested.", "Interpreted by the radiologist on {past}.", "Study {number}."]),
    ]),
    "letter": (8, ["Lakeside Parish", "Quarry Street Family Practice", "Aerial Hill Senior Center"], [
        ("", ["Dear {person},", "thank you for your kind letter of {past}.", "We were glad to hear that the new ramp is of use.", "The choir meets again on {day}, and a seat is kept for you.", "Please let us know whether someone can drive you.", "If you have any question, write or call {phone}.", "With kind regards,", "Sincerely yours,"]),
        ("", ["Dear {person},", "I am writing to tell you that I leave the practice at the end of the month.", "My colleague will look after you from {day} on.", "You need not do anything.", "It was a pleasure to know you and your family.", "Enclosed you find her card.", "Yours sincerely,"]),
    ], [
        ("", ["Dear {person},", "it was lovely to see you at the lunch on {past}.", "Several members asked after your violins.", "We hope you will join us again on {day}.", "A volunteer would gladly come by for you, just phone {phone}.", "Warm regards from all of us,", "Your friends at {sender}"]),
        ("", ["Dear friends of {person},", "our office moves to Canal Park on {day}.", "The telephone number stays {phone}.", "Parking is free behind the building.", "We look forward to welcoming you there and thank you for your patience.", "Best wishes,"]),
    ]),
    "discharge paper": (6, ["Lakeshore Hospital", "Hillside Rehabilitation"], [
        ("Discharge instructions", ["Admitted {past}, discharged {day}.", "You were in the hospital because of a broken hip.", "Do not lift anything heavier than ten pounds.", "Keep the incision clean and dry.", "Call us at {phone} if you have a fever.", "Follow up with your surgeon in two weeks.", "Return to the emergency department if you cannot catch your breath.", "Your diet: as before."]),
        ("Discharge summary", ["Admission date {past}.", "Reason for admission: fall at home.", "Hospital course: operation without complication.", "Condition at discharge: stable.", "Discharged to: home with family.", "Medicines at discharge are listed on the next page.", "Pending at discharge: none.", "Attending: Dr Petra Lindqvist."]),
    ], [
        ("After your stay", ["You leave us today, {day}, after nine days of care.", "What to do at home: walk with the frame several times a day.", "Change the dressing every second day.", "Warning signs: swelling, redness, chest pain.", "Phone the nurse line {phone} day or night.", "See your own clinician within seven days of discharge.", "The nurse has gone over these instructions with you."]),
        ("Going home plan", ["Date of leaving the unit {day}, admitted {past}.", "Diagnosis at discharge: pneumonia, improved.", "Oxygen is not needed at home.", "Home nursing visits three times a week.", "Finish all of the antibiotic.", "Follow-up appointment made with the clinic.", "Questions after discharge {phone}."]),
    ]),
    "prescription": (5, ["Harbor Street Pharmacy", "Quarry Street Family Practice"], [
        ("Rx {number}", ["Take one tablet by mouth every morning.", "Quantity 30, refills 2.", "Prescriber Dr Petra Lindqvist.", "Dispense as written.", "Discard after {day}.", "May cause dizziness.", "Refill by phone {phone}."]),
        ("Prescription", ["For: {person}.", "Sig: one capsule twice daily with food.", "Dispense sixty capsules.", "Refills: three.", "Substitution permitted.", "Signature of prescriber, license {number}."]),
    ], [
        ("Your medicine leaflet", ["Rx number {number}, filled {past}.", "Directions: swallow one tablet at bedtime with water.", "This prescription can be refilled once before {day}.", "Do not drink alcohol with this medicine.", "Ask the pharmacist before you take other tablets.", "Prescribed by Dr Lindqvist.", "Pharmacy telephone {phone}."]),
        ("Order for medicine", ["Patient {person}.", "Apply a thin layer to the skin two times daily for ten days.", "Tube of thirty grams, no refill.", "Generic substitution allowed.", "Prescriber number {number}, pharmacy call back {phone}."]),
    ]),
    "insurance card": (4, ["North Shore Health Plan", "Great Lakes Mutual"], [
        ("Member card", ["Member ID {number}.", "Group 40117.", "RxBIN 000000 RxPCN 00000.", "Copay office visit $20, specialist $40.", "Show this card at each visit.", "Customer service {phone}.", "Coverage effective {past}."]),
        ("Subscriber identification", ["Subscriber {person}.", "Plan: Choice Network.", "ID number {number}.", "Emergency room copay $90.", "Prior authorization {phone}.", "This card does not guarantee coverage."]),
    ], [
        ("Health insurance card", ["Name of member {person}.", "Member number {number}, group number 2208.", "Primary care copay $15.", "Urgent care $35.", "Pharmacy help desk {phone}, RxGRP HVN.", "Carry this card with you.", "Plan year begins {past}."]),
        ("Plan member", ["ID {number} {person}.", "Network: Superior Select.", "Deductible $250 a year.", "Providers call {phone} for eligibility.", "Effective {past}."]),
    ]),
    "insurance policy": (4, ["Great Lakes Mutual", "Pine County Assurance"], [
        ("Policy declarations", ["Policy number {number}.", "Named insured {person}.", "Annual premium {money}.", "Coverage A dwelling, coverage C personal property.", "Deductible {money} for each loss.", "This policy excludes flood.", "Policy period begins {past}.", "The mortgagee is named in the endorsement."]),
        ("Whole life policy", ["The insurer will pay the face amount to the beneficiary.", "Insured: {person}.", "Premiums are payable each quarter.", "Cash value and policy loans are described below.", "The contestable period is two years.", "Policy date {past}, number {number}."]),
    ], [
        ("Renewal of your homeowners coverage", ["Insured: {person}, policy {number}.", "The premium for the coming term is {money}.", "Limits of liability are shown on the schedule.", "Endorsements attached: water backup.", "Exclusions apply as stated in part two.", "The policyholder may cancel with written notice."]),
        ("Certificate of long-term care insurance", ["Policyholder {person}.", "Benefits are paid after an elimination period of ninety days.", "Daily benefit {money}.", "Premiums may change for all insureds of a class.", "Insurer contact {phone}.", "Contract number {number} issued {past}."]),
    ]),
    "directive": (4, ["Office of Anders Holm, Attorney", "Lakeshore Hospital"], [
        ("Health care directive", ["I, {person}, appoint my daughter as my health care agent.", "If she cannot act, my son is the alternate agent.", "My agent may decide about treatment when I cannot speak for myself.", "I wish to be kept comfortable.", "Signed before a notary public on {past}.", "Two witnesses have signed below.", "This directive revokes all earlier ones."]),
        ("Power of attorney for health care", ["The principal, {person}, names an attorney-in-fact for health care decisions.", "It stays in force if the principal loses capacity.", "The agent has access to medical records.", "Organ donation: as stated in part three.", "Witness statement and signatures.", "Dated {past}."]),
    ], [
        ("My wishes about my care", ["These are the wishes of {person} for the time when I am unable to decide.", "The person I choose to make health care decisions for me is Ines.", "I do not want to be kept alive by machines without hope of recovery.", "This statement is my advance directive.", "Witnessed and signed on {past}."]),
        ("Appointment of a health care agent", ["Made by {person} on {past}.", "My agent shall follow my instructions in this document.", "A substitute agent is named in section four.", "I have talked about it with my agent.", "Acknowledged before the notary."]),
    ]),
    "release of information": (3, ["Lakeshore Hospital", "Quarry Street Family Practice"], [
        ("Authorization to release information", ["I authorize {sender} to disclose my health records.", "Disclose to: Ines Varga.", "Information to be released: notes and laboratory reports.", "I may revoke this authorization in writing.", "It expires one year after the date of signature.", "Signature of {person}, {past}."]),
        ("Consent to share records", ["The undersigned permits {sender} to give records to the persons named.", "Protected health information may no longer be protected once disclosed.", "Purpose: continuing care.", "Refusing to sign does not affect treatment.", "Signed {past}."]),
    ], [
        ("Request for disclosure of health information", ["Patient {person}.", "Please send copies of my records to the recipient below.", "Recipient: the family member named on page two.", "This authorization may be revoked at any time.", "Records from {past} until today.", "Records department {phone}."]),
        ("Permission to talk with family", ["{person} permits the staff to share information with the people on this list.", "This release covers spoken information and portal messages.", "You can withdraw your permission in writing.", "Valid until {day}."]),
    ]),
    "medical order": (3, ["Lakeshore Hospital", "Superior Heart Clinic"], [
        ("Portable medical orders", ["Section A: attempt resuscitation or do not attempt resuscitation.", "Section B: selective treatment, avoid intubation.", "These orders follow the patient {person} in every setting.", "Signed by the clinician on {past}.", "Discussed with: patient and agent.", "Send the form with the patient at transfer."]),
        ("Physician orders", ["Order: physical therapy three times weekly.", "Order: bed rail and raised toilet seat.", "Diagnosis supports medical necessity.", "Duration sixty days.", "Physician signature, {past}, license {number}."]),
    ], [
        ("Orders for life-sustaining treatment", ["Cardiopulmonary resuscitation: see the box that is checked.", "Comfort-focused treatment through symptom management.", "No feeding tube.", "Clinician signature and date {past}.", "The original stays with {person}.", "Review these orders when the condition changes."]),
        ("Order for home equipment", ["The clinician orders a walker with wheels for {person}.", "Medical necessity: unsteady gait.", "Length of need: lifetime.", "Ordering physician signature {past}.", "Treatment plan attached."]),
    ]),
    "warranty": (3, ["Birch Lane Electric", "Canal Appliance"], [
        ("Limited warranty", ["We warrant this product against defects in material for two years.", "Model and serial number {number}.", "Keep the proof of purchase of {past}.", "The manufacturer will repair or replace the product.", "Damage by misuse is not covered.", "Service {phone}."]),
        ("Warranty certificate", ["Product: stair lift, serial {number}.", "Purchased {past}.", "Parts are covered for five years, labor for one.", "This warranty gives you specific legal rights.", "Register the product within thirty days."]),
    ], [
        ("Guarantee and service", ["Your hearing amplifier, serial number {number}, is guaranteed for three years from purchase on {past}.", "Defects of workmanship are repaired without charge.", "Batteries are excluded.", "Bring the product and the receipt to the dealer.", "Repair service {phone}."]),
        ("Extended warranty plan", ["Covers the refrigerator, model {number}, until {day}.", "Replacement parts and labor included.", "Defects caused by accidents are not covered.", "The manufacturer warrants the compressor for ten years.", "To ask for a repair call {phone}."]),
    ]),
    "tax paper": (3, ["Department of Revenue Services", "Lakehead Pension Fund"], [
        ("Statement of pension income", ["Gross distribution {money}.", "Taxable amount {money}.", "Federal income tax withheld {money}.", "Keep this form for your tax return.", "Recipient {person}.", "Payer identification {number}."]),
        ("Property tax statement", ["Parcel {number}.", "Taxable market value {money}.", "First half of the tax due May 15.", "Homestead classification applies.", "The county assessor set the value.", "Taxes payable in the coming year."]),
    ], [
        ("Annual tax form for retirees", ["Total pension paid {money}.", "Tax withheld at source {money}.", "Enter these amounts on your income tax return.", "A copy was sent to the revenue service.", "Payee {person}, file number {number}."]),
        ("Notice of assessment", ["Your income tax return of last year was processed on {past}.", "Taxable income {money}.", "Refund of tax {money}.", "If you disagree with the assessment, file an appeal within sixty days.", "Taxpayer number {number}."]),
    ]),
}
