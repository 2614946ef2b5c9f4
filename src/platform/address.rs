//! Whose address a request comes from, when a proxy stands in between.
//!
//! A proxy adds the address it saw at the right end of X-Forwarded-For; whatever stands to the left of the first
//! address that is not a trusted proxy could have been made up by the client. So the list is walked from the right,
//! and only while each hop is one we trust. This is the one place that decides it.

use std::fmt;
use std::net::{IpAddr, SocketAddr};

/// An address, or a block of them: "192.0.2.7", "10.0.0.0/8", "2001:db8::/32".
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Network {
    first: IpAddr,
    /// Leading bits that all its addresses share.
    shared: u32,
}

impl Network {
    /// Bits after the shared ones must be zero: "10.1.2.3/8" is more likely a slip than meant.
    pub fn parse(text: &str) -> Option<Network> {
        let (first, shared) = match text.trim().split_once('/') {
            Some((first, shared)) => (first, Some(shared)),
            None => (text.trim(), None),
        };
        let first: IpAddr = first.parse().ok()?;
        let (_, width) = bits(first);
        let shared = match shared {
            Some(digits) if digits.bytes().all(|byte| byte.is_ascii_digit()) => {
                digits.parse().ok()?
            }
            Some(_) => return None,
            None => width,
        };
        let network = Network { first, shared };
        (shared <= width && bits(first).0 & !network.mask() == 0).then_some(network)
    }

    pub fn contains(&self, address: IpAddr) -> bool {
        let ((first, width), (address, same_width)) =
            (bits(self.first), bits(address.to_canonical()));
        width == same_width && address & self.mask() == first
    }

    fn mask(&self) -> u128 {
        let (_, width) = bits(self.first);
        let all = u128::MAX >> (128 - width);
        all & !all.checked_shr(self.shared).unwrap_or(0)
    }
}

impl fmt::Display for Network {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}/{}", self.first, self.shared)
    }
}

fn bits(address: IpAddr) -> (u128, u32) {
    match address {
        IpAddr::V4(v4) => (v4.to_bits().into(), 32),
        IpAddr::V6(v6) => (v6.to_bits(), 128),
    }
}

/// The client's address. `peer` is who holds the connection, `forwarded_for` the X-Forwarded-For headers in the order
/// they came. Something unreadable ends the walk at the last good address.
pub fn client(peer: IpAddr, forwarded_for: &[&str], trusted: &[Network]) -> IpAddr {
    let is_trusted = |address: IpAddr| trusted.iter().any(|network| network.contains(address));
    let mut client = peer.to_canonical();
    let mut hops = forwarded_for.iter().rev().flat_map(|header| header.rsplit(','));
    while is_trusted(client) {
        match hops.next().and_then(hop) {
            Some(address) => client = address,
            None => break,
        }
    }
    client
}

/// Some proxies add the port.
fn hop(text: &str) -> Option<IpAddr> {
    let text = text.trim();
    let with_port = || text.parse::<SocketAddr>().map(|socket| socket.ip());
    text.parse().or_else(|_| with_port()).map(|address: IpAddr| address.to_canonical()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ip(text: &str) -> IpAddr {
        text.parse().unwrap()
    }

    fn seen(peer: &str, forwarded_for: &[&str]) -> String {
        let trusted =
            ["127.0.0.1", "10.0.0.0/8", "2001:db8::/32"].map(|text| Network::parse(text).unwrap());
        client(ip(peer), forwarded_for, &trusted).to_string()
    }

    #[test]
    fn a_network_holds_its_addresses() {
        let holds =
            |network: &str, address: &str| Network::parse(network).unwrap().contains(ip(address));
        assert!(holds("10.0.0.0/8", "10.255.255.255") && !holds("10.0.0.0/8", "11.0.0.0"));
        assert!(holds("192.0.2.7", "192.0.2.7") && !holds("192.0.2.7", "192.0.2.6"));
        assert!(holds("192.0.2.128/25", "192.0.2.128") && !holds("192.0.2.128/25", "192.0.2.127"));
        assert!(holds("0.0.0.0/0", "203.0.113.9") && !holds("0.0.0.0/0", "2001:db8::1"));
        assert!(holds("::/0", "2001:db8::1") && !holds("::/0", "203.0.113.9"));
        assert!(
            holds("2001:db8::/32", "2001:db8:ffff::1") && !holds("2001:db8::/32", "2001:db9::")
        );
        assert!(holds("10.0.0.0/8", "::ffff:10.1.2.3"));
    }

    #[test]
    fn what_is_no_network_is_refused() {
        for text in [
            "",
            "10.0.0.0/33",
            "10.0.0.0/",
            "10.0.0.0/+8",
            "10.1.2.3/8",
            "10.0.0/8",
            "2001:db8::/129",
            "proxy",
            "10.0.0.0/8/8",
        ] {
            assert_eq!(Network::parse(text), None, "{text}");
        }
    }

    #[test]
    fn the_header_of_a_stranger_is_not_believed() {
        assert_eq!(seen("203.0.113.9", &["198.51.100.1"]), "203.0.113.9");
        assert_eq!(client(ip("127.0.0.1"), &["198.51.100.1"], &[]), ip("127.0.0.1"));
    }

    #[test]
    fn the_first_address_from_the_right_that_is_not_a_proxy_counts() {
        assert_eq!(seen("127.0.0.1", &["198.51.100.1"]), "198.51.100.1");
        assert_eq!(seen("127.0.0.1", &["6.6.6.6, 198.51.100.1, 10.0.0.2"]), "198.51.100.1");
        assert_eq!(
            seen("127.0.0.1", &["6.6.6.6", "198.51.100.1", "10.0.0.2,10.0.0.3"]),
            "198.51.100.1"
        );
        assert_eq!(seen("2001:db8::1", &["2001:db9::7"]), "2001:db9::7");
    }

    #[test]
    fn proxies_all_the_way_give_the_farthest() {
        assert_eq!(seen("127.0.0.1", &["10.0.0.9, 10.0.0.2"]), "10.0.0.9");
        assert_eq!(seen("127.0.0.1", &[]), "127.0.0.1");
    }

    #[test]
    fn what_cannot_be_read_ends_the_walk() {
        assert_eq!(seen("127.0.0.1", &["198.51.100.1, unknown, 10.0.0.2"]), "10.0.0.2");
        assert_eq!(seen("127.0.0.1", &["198.51.100.1,"]), "127.0.0.1");
        assert_eq!(seen("127.0.0.1", &[""]), "127.0.0.1");
    }

    #[test]
    fn ports_and_mapped_addresses_are_understood() {
        assert_eq!(seen("::ffff:127.0.0.1", &["198.51.100.1:4711"]), "198.51.100.1");
        assert_eq!(seen("127.0.0.1", &["[2001:db9::7]:4711"]), "2001:db9::7");
        assert_eq!(seen("127.0.0.1", &["::ffff:198.51.100.1"]), "198.51.100.1");
    }
}
