//! CRC-32 of a text: finds every burst of up to 32 flipped bits in a line.
//!
//! The polynomial and bit order of IEEE 802.3, as in gzip and PNG (RFC 1952, section 8), so that
//! common tools can check a journal.

const TABLE: [u32; 256] = table();

const fn table() -> [u32; 256] {
    let mut table = [0; 256];
    let mut byte = 0;
    while byte < 256 {
        let mut rest = byte as u32;
        let mut bit = 0;
        while bit < 8 {
            rest = (rest >> 1) ^ (0xEDB8_8320 * (rest & 1));
            bit += 1;
        }
        table[byte] = rest;
        byte += 1;
    }
    table
}

/// The checksum of a text, as eight hexadecimal digits.
pub(super) fn of(text: &str) -> String {
    let sum = text.bytes().fold(u32::MAX, |sum, byte| {
        (sum >> 8) ^ TABLE[((sum ^ u32::from(byte)) & 0xFF) as usize]
    });
    format!("{:08x}", !sum)
}

#[cfg(test)]
mod tests {
    #[test]
    fn val_the_check_value_of_the_published_polynomial() {
        // The check value of CRC-32/ISO-HDLC, from the common catalogue of CRCs.
        assert_eq!(super::of("123456789"), "cbf43926");
        assert_eq!(super::of(""), "00000000");
    }
}
