//! Random streams by name: what one draws never hangs on another, on threads or on order.

use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;

/// The last word of every key: the letters "firstfil", so that no other program shares our streams.
const OURS: u64 = u64::from_le_bytes(*b"firstfil");
/// First value and factor of FNV-1a for 64 bits (Fowler, Noll & Vo, in the public domain).
const FNV: (u64, u64) = (0xcbf2_9ce4_8422_2325, 0x0000_0100_0000_01b3);

/// The stream of a name for one member of a seed.
///
/// ```text
/// key of ChaCha8 = seed, FNV-1a of the name, member, a constant (four words, little-endian)
/// ```
pub fn stream(seed: u64, name: &str, member: u64) -> ChaCha8Rng {
    let mut key = [0; 32];
    let words = [seed, fnv1a64(name), member, OURS];
    for (place, word) in key.chunks_exact_mut(8).zip(words) {
        place.copy_from_slice(&word.to_le_bytes());
    }
    ChaCha8Rng::from_seed(key)
}

/// A number for a text that never changes: FNV-1a.
pub fn fnv1a64(text: &str) -> u64 {
    let mix = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(FNV.1);
    text.bytes().fold(FNV.0, mix)
}

/// A share between 0 and 1, never either of them, from 32 digits after the point.
///
/// ```text
/// u = (digits + ½)/2^32
/// ```
pub fn share(digits: u32) -> f64 {
    (f64::from(digits) + 0.5) / 4_294_967_296.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::Rng;

    #[test]
    fn names_hash_as_published() {
        // test vectors of the authors of FNV, 64-bit FNV-1a, from memory
        assert_eq!(fnv1a64(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv1a64("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a64("foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn a_stream_repeats_and_every_word_of_its_key_makes_another() {
        let first = |seed, name, member| stream(seed, name, member).next_u64();
        let streams = [
            first(1, "air.flow", 17),
            first(2, "air.flow", 17),
            first(1, "air.flow", 18),
            first(1, "gas.rate", 17),
        ];
        assert_eq!(streams[0], first(1, "air.flow", 17));
        for (at, one) in streams.iter().enumerate() {
            assert!(!streams[..at].contains(one), "{at}");
        }
    }

    #[test]
    fn a_share_is_never_nothing_and_never_all() {
        assert!(share(0) > 0.0 && share(u32::MAX) < 1.0);
        assert_eq!(share(1 << 31), 0.5 + 0.5 / 4_294_967_296.0);
    }
}
