//! An order that people set: one thing changes places with the one before it or after it.

/// A step in the order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    Earlier,
    Later,
}

/// The one in the list and the neighbour it changes places with; `None` where it is at the end
/// already, or not in the list.
pub fn places<T>(list: &[T], is_it: impl Fn(&T) -> bool, step: Step) -> Option<(&T, &T)> {
    let at = list.iter().position(is_it)?;
    let neighbour = match step {
        Step::Earlier => at.checked_sub(1)?,
        Step::Later => at + 1,
    };
    Some((&list[at], list.get(neighbour)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_changes_places_with_the_neighbour_and_ends_at_the_ends() {
        let list = [1, 2, 3];
        let ids = |id, step| places(&list, |it| *it == id, step).map(|(one, other)| (*one, *other));
        assert_eq!(ids(2, Step::Earlier), Some((2, 1)));
        assert_eq!(ids(2, Step::Later), Some((2, 3)));
        assert_eq!(ids(1, Step::Earlier), None);
        assert_eq!(ids(3, Step::Later), None);
        assert_eq!(ids(9, Step::Later), None);
    }
}
