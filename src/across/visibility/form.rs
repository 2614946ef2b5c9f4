//! The members from whom the item is to be hidden: the ticked ones.

use crate::base::ids::MemberId;
use crate::platform::web::form::{FormErrors, FromForm, Reader};

pub struct Decision {
    pub hide_from: Vec<MemberId>,
}

impl FromForm for Decision {
    fn read(form: &mut Reader) -> Result<Decision, FormErrors> {
        let ticked: Result<Vec<MemberId>, _> =
            form.every("hide").iter().map(|it| it.parse()).collect();
        if ticked.is_err() {
            form.wrong("hide", "Choose from the members of this record.");
        }
        form.finish(|| Some(Decision { hide_from: ticked.ok()? }))
    }
}
