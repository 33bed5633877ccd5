//! Whole numbers in as few bytes as they need.

/// Numbers from here on are refused; no field of a layout comes near.
pub(super) const TOO_LARGE: u64 = 1 << 40;

/// Adds a number, seven bits a byte, low bits first; the top bit says that
/// more follow.
pub(super) fn put_varint(out: &mut Vec<u8>, mut n: u64) {
    while n >= 0x80 {
        out.push(n as u8 | 0x80);
        n >>= 7;
    }
    out.push(n as u8);
}

/// Adds a signed number: 0, -1, 1, -2 … become 0, 1, 2, 3 …
pub(super) fn put_signed(out: &mut Vec<u8>, n: i64) {
    put_varint(out, ((n << 1) ^ (n >> 63)) as u64);
}

/// Why bytes are not what the format says, as a reader may be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub(super) enum Bad {
    #[error("the bytes end too early")]
    Short,
    #[error("a number that is too large or longer than it need be")]
    Number,
    #[error("text that is not UTF-8")]
    Utf8,
    #[error("text that is too long")]
    LongText,
    #[error("a word, mark or reference this format does not have")]
    Unknown,
    #[error("too many entries")]
    Many,
    #[error("sections that are doubled or out of order")]
    Order,
    #[error("bytes left over")]
    Left,
    #[error("two versions where one may be")]
    Nested,
}

/// Bytes read from the front; every read says when they end.
#[derive(Clone, Copy)]
pub(super) struct Bytes<'a>(pub(super) &'a [u8]);

impl<'a> Bytes<'a> {
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The next `n` bytes, none of them copied.
    pub(super) fn take(&mut self, n: u64) -> Result<&'a [u8], Bad> {
        let n = usize::try_from(n).map_err(|_| Bad::Short)?;
        let (head, tail) = self.0.split_at_checked(n).ok_or(Bad::Short)?;
        self.0 = tail;
        Ok(head)
    }

    pub(super) fn byte(&mut self) -> Result<u8, Bad> {
        let (first, rest) = self.0.split_first().ok_or(Bad::Short)?;
        self.0 = rest;
        Ok(*first)
    }

    pub(super) fn varint(&mut self) -> Result<u64, Bad> {
        let mut n = 0;
        for place in 0..6 {
            let byte = self.byte()?;
            n |= u64::from(byte & 0x7f) << (7 * place);
            if byte < 0x80 {
                // One number has one writing: no empty last byte.
                let needless = byte == 0 && place > 0;
                return if needless || n >= TOO_LARGE {
                    Err(Bad::Number)
                } else {
                    Ok(n)
                };
            }
        }
        Err(Bad::Number)
    }

    pub(super) fn signed(&mut self) -> Result<i64, Bad> {
        let n = self.varint()?;
        Ok((n >> 1) as i64 ^ -((n & 1) as i64))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_come_back_and_have_one_writing() {
        for n in [
            0,
            1,
            -1,
            63,
            64,
            -64,
            -65,
            20_000,
            -20_000,
            i64::from(i32::MAX),
        ] {
            let mut out = Vec::new();
            put_signed(&mut out, n);
            assert_eq!(Bytes(&out).signed(), Ok(n), "{n} as {out:?}");
        }
        let long = Bytes(&[0x80, 0x00]).varint();
        assert_eq!(long, Err(Bad::Number), "0 in two bytes");
        let vast = Bytes(&[0xff; 9]).varint();
        assert_eq!(vast, Err(Bad::Number), "more than any field holds");
        assert_eq!(Bytes(&[0x80]).varint(), Err(Bad::Short), "cut");
    }
}
