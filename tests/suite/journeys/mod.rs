//! What people do, told as they would tell it. One file a journey.

mod a_bad_backup_is_refused;
mod a_contact_answers_now;
mod a_contact_is_saved_to_a_phone;
mod a_family_is_invited;
mod a_first_steward_starts_the_record;
mod a_medicine_is_kept;
mod a_nurse_gets_the_emergency_sheet;
mod allergies_have_three_states;
mod an_aide_sees_only_what_she_needs;
mod an_invitation_goes_wrong;
mod an_item_is_hidden;
mod conditions_are_kept;
mod contacts_are_phoned_in_order;
mod how_she_usually_is;
mod members_sign_in_and_out;
mod places_change;
mod statements_are_never_derived;
mod the_house_is_backed_up;
mod the_house_under_a_sub_path;
mod the_one_who_runs_the_server;
mod the_person_has_died;
mod the_person_is_described;
mod the_phone_has_no_network;
mod today_is_read;
mod two_people_edit_at_once;
mod what_happened_is_noted;
