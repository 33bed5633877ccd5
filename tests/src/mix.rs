/// FNV-1a of 64 bits, as the generators compute it, in hex.
#[must_use]
pub fn fnv(bytes: &[u8]) -> String {
    let mix = |mixed: u64, byte: &u8| (mixed ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3);
    format!("{:016x}", bytes.iter().fold(0xcbf2_9ce4_8422_2325, mix))
}
