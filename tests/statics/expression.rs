//! Small expressions of the published cases: `hypot(Ax,Ay)/1000`, `-F`, `3000*sind(60)`.

use std::collections::BTreeMap;

/// The value of an expression in named quantities; sines, tangents and angles in degrees.
pub(crate) fn value(text: &str, names: &BTreeMap<String, f64>) -> f64 {
    let mut parser = Parser { rest: text, names };
    let value = parser.sum();
    assert!(parser.rest.is_empty(), "{text}: stops at {}", parser.rest);
    value
}

struct Parser<'a> {
    rest: &'a str,
    names: &'a BTreeMap<String, f64>,
}

impl<'a> Parser<'a> {
    fn eat(&mut self, sign: char) -> bool {
        let rest = self.rest.strip_prefix(sign);
        self.rest = rest.unwrap_or(self.rest);
        rest.is_some()
    }

    fn take(&mut self, length: usize) -> &'a str {
        let (taken, rest) = self.rest.split_at(length);
        self.rest = rest;
        taken
    }

    fn sum(&mut self) -> f64 {
        let mut sum = self.product();
        loop {
            if self.eat('+') {
                sum += self.product();
            } else if self.eat('-') {
                sum -= self.product();
            } else {
                return sum;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut product = self.single();
        loop {
            if self.eat('*') {
                product *= self.single();
            } else if self.eat('/') {
                product /= self.single();
            } else {
                return product;
            }
        }
    }

    fn single(&mut self) -> f64 {
        if self.eat('-') {
            return -self.single();
        }
        if self.eat('(') {
            let inner = self.sum();
            assert!(self.eat(')'), "open bracket");
            return inner;
        }
        if self.rest.starts_with(|c: char| c.is_ascii_digit()) {
            return self.literal();
        }
        let ends = |c: char| !c.is_ascii_alphanumeric() && c != '_';
        let name = self.take(self.rest.find(ends).unwrap_or(self.rest.len()));
        if self.eat('(') {
            return self.call(name);
        }
        *self
            .names
            .get(name)
            .unwrap_or_else(|| panic!("no quantity {name} before {}", self.rest))
    }

    fn literal(&mut self) -> f64 {
        let mut length = 0;
        let mut before = ' ';
        for c in self.rest.chars() {
            let exponent_sign = c == '-' && before == 'e';
            if !(c.is_ascii_digit() || c == '.' || c == 'e' || exponent_sign) {
                break;
            }
            before = c;
            length += 1;
        }
        self.take(length).parse().expect("a number")
    }

    fn call(&mut self, name: &str) -> f64 {
        let first = self.sum();
        let second = if self.eat(',') { self.sum() } else { 0.0 };
        assert!(self.eat(')'), "open bracket");
        match name {
            "hypot" => first.hypot(second),
            "atan2d" => first.atan2(second).to_degrees(),
            "sind" => first.to_radians().sin(),
            "tand" => first.to_radians().tan(),
            other => panic!("no function {other}"),
        }
    }
}

#[test]
fn expressions_are_read() {
    let names = BTreeMap::from([("F".to_owned(), 3.0), ("N_y".to_owned(), 4.0)]);
    for (text, expected) in [
        ("-F", -3.0),
        ("hypot(F,N_y)/1000", 0.005),
        ("F/(2e-5*9.8)", 3.0 / (2e-5 * 9.8)),
        ("N_y-F-1", 0.0),
        ("atan2d(F,-F)", 135.0),
        ("2*sind(30)", 1.0),
    ] {
        assert!((value(text, &names) - expected).abs() < 1e-9, "{text}");
    }
}
