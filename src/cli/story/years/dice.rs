//! Choices that are the same at each telling: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014,
//! from memory). Good enough for a story, and for nothing that has to be kept secret.

pub struct Dice(u64);

impl Dice {
    pub fn of(seed: u64) -> Dice {
        Dice(seed)
    }

    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut it = self.0;
        it = (it ^ (it >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        it = (it ^ (it >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        it ^ (it >> 31)
    }

    /// Dice of their own, so that a choice more in one week leaves the next as it is.
    pub fn split(&mut self) -> Dice {
        Dice(self.roll())
    }

    /// A number from zero to below this.
    pub fn below(&mut self, end: usize) -> usize {
        let end = end.max(1) as u64;
        usize::try_from(self.roll() % end).unwrap_or(0)
    }

    /// One of several; none of none.
    pub fn one_of<'a, T>(&mut self, all: &'a [T]) -> Option<&'a T> {
        all.get(self.below(all.len()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_rolls_the_same_and_stays_below() {
        let rolled = |seed| {
            let mut dice = Dice::of(seed);
            (0..40).map(|_| dice.below(6)).collect::<Vec<_>>()
        };
        assert_eq!(rolled(7), rolled(7));
        assert_ne!(rolled(7), rolled(8));
        assert!((0..6).all(|side| rolled(7).contains(&side)));
    }
}
