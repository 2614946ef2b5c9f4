//! Randomness from the operating system: tokens, keys, salts, short codes.

/// `bytes` random bytes as hex.
pub fn hex(bytes: usize) -> String {
    hex::encode(fill(bytes))
}

/// A code that is read aloud and typed: two groups of four letters and digits, without those
/// that are taken for one another (no I, L, O, U, 0, 1). 30^8 codes.
pub fn code() -> String {
    const LETTERS: &[u8; 30] = b"23456789ABCDEFGHJKMNPQRSTVWXYZ";
    let mut letters = Vec::with_capacity(8);
    while letters.len() < 8 {
        // 240 is the largest multiple of 30 in a byte: above it the letters would not be even.
        letters.extend(
            fill(16)
                .into_iter()
                .filter(|byte| *byte < 240)
                .map(|byte| LETTERS[usize::from(byte % 30)]),
        );
    }
    let text: String = letters[..8].iter().map(|it| char::from(*it)).collect();
    format!("{}-{}", &text[..4], &text[4..])
}

fn fill(bytes: usize) -> Vec<u8> {
    let mut buffer = vec![0; bytes];
    getrandom::fill(&mut buffer).expect("the operating system gives randomness");
    buffer
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tokens_have_their_length_and_codes_their_shape() {
        assert_eq!(hex(32).len(), 64);
        assert_ne!(hex(16), hex(16));
        let code = code();
        assert_eq!((code.len(), &code[4..5]), (9, "-"));
    }
}
