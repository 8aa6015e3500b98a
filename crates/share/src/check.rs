//! The check by which damage is found.

/// CRC-32 as Ethernet has it (IEEE 802.3): the polynomial 0x04C11DB7, its bits in reverse, all ones before and after.
pub(crate) fn crc32<'a>(bytes: impl IntoIterator<Item = &'a u8>) -> u32 {
    let mut sum = !0_u32;
    for byte in bytes {
        sum ^= u32::from(*byte);
        for _ in 0..8 {
            let is_odd = sum & 1 == 1;
            sum >>= 1;
            if is_odd {
                sum ^= 0xEDB8_8320;
            }
        }
    }
    !sum
}

#[cfg(test)]
mod tests {
    use super::crc32;

    /// Source: the check value that catalogues of such sums list for these nine digits under CRC-32/ISO-HDLC; and the sum of
    /// the chunk that ends an image, by the PNG specification (both from memory).
    #[test]
    fn the_published_values_come_out() {
        assert_eq!(crc32(b"123456789"), 0xCBF4_3926);
        assert_eq!(crc32(b""), 0);
        assert_eq!(crc32(b"IEND"), 0xAE42_6082);
    }
}
