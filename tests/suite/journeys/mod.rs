//! What people do, told as they would tell it. One file a journey.

mod a_first_steward_starts_the_record;
mod a_medicine_is_kept;
mod an_item_is_hidden;
mod members_sign_in_and_out;
mod two_people_edit_at_once;
