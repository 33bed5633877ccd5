//! Which pieces read as one group.

use crate::order;

/// A link this many times the mean of the links next to it parts two groups.
/// Our choice; Zahn (1971), *IEEE Trans. Comput.* C-20:68, takes about 2 (from
/// memory).
pub const GROUP_CUT: f64 = 1.5;

/// A gap between two pieces, which are named by their places in a list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Link {
    /// The first piece, the smaller number.
    pub a: usize,
    /// The second piece.
    pub b: usize,
    /// Distance from edge to edge.
    pub gap: f64,
}

/// The shortest links that join all pieces which any links join: a minimum
/// spanning tree (Kruskal 1956), shortest first. Equal gaps go by number;
/// links to pieces there are not, and gaps that are not numbers, are left out.
#[must_use]
pub fn spanning_links(pieces: usize, links: &[Link]) -> Vec<Link> {
    let mut sorted: Vec<Link> = links
        .iter()
        .copied()
        .filter(|l| l.a < pieces && l.b < pieces && !l.gap.is_nan())
        .collect();
    order::sort(&mut sorted, |x, y| {
        x.gap
            .total_cmp(&y.gap)
            .then(x.a.cmp(&y.a))
            .then(x.b.cmp(&y.b))
    });
    let mut parties = Parties::new(pieces);
    sorted.retain(|l| parties.join(l.a, l.b));
    sorted
}

/// Which group each piece is in, groups numbered in the order of their first
/// pieces: the spanning tree without links longer than [`GROUP_CUT`] times the
/// mean of the links that meet them.
#[must_use]
pub fn groups(pieces: usize, links: &[Link]) -> Vec<usize> {
    let tree = spanning_links(pieces, links);
    let mut parties = Parties::new(pieces);
    for (i, link) in tree.iter().enumerate() {
        let meets = |l: &Link| [l.a, l.b].iter().any(|p| [link.a, link.b].contains(p));
        let next: Vec<f64> = tree
            .iter()
            .enumerate()
            .filter(|(j, l)| *j != i && meets(l))
            .map(|(_, l)| l.gap.max(0.0))
            .collect();
        let mean = next.iter().sum::<f64>() / next.len() as f64;
        if next.is_empty() || link.gap <= GROUP_CUT * mean {
            parties.join(link.a, link.b);
        }
    }
    let mut names: Vec<usize> = Vec::new();
    (0..pieces)
        .map(|p| {
            let head = parties.head(p);
            names.iter().position(|n| *n == head).unwrap_or_else(|| {
                names.push(head);
                names.len() - 1
            })
        })
        .collect()
}

/// Who belongs together so far.
struct Parties(Vec<usize>);

impl Parties {
    fn new(pieces: usize) -> Self {
        Self((0..pieces).collect())
    }

    fn head(&self, mut piece: usize) -> usize {
        while self.0[piece] != piece {
            piece = self.0[piece];
        }
        piece
    }

    /// Joins two; false when they already belonged together.
    fn join(&mut self, a: usize, b: usize) -> bool {
        let (a, b) = (self.head(a), self.head(b));
        self.0[a.max(b)] = a.min(b);
        a != b
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All links between places on a line.
    fn line(places: &[f64]) -> Vec<Link> {
        let mut links = Vec::new();
        for a in 0..places.len() {
            for b in a + 1..places.len() {
                links.push(Link {
                    a,
                    b,
                    gap: (places[a] - places[b]).abs(),
                });
            }
        }
        links
    }

    #[test]
    fn tree_takes_the_shortest_links() {
        let tree = spanning_links(4, &line(&[0.0, 10.0, 11.0, 30.0]));
        let pairs: Vec<_> = tree.iter().map(|l| (l.a, l.b)).collect();
        assert_eq!(pairs, [(1, 2), (0, 1), (2, 3)], "shortest first");
    }

    #[test]
    fn far_pair_is_a_group_of_its_own() {
        let found = groups(5, &line(&[0.0, 10.0, 20.0, 60.0, 70.0]));
        assert_eq!(
            found,
            [0, 0, 0, 1, 1],
            "40 is four times the gaps beside it"
        );
    }

    #[test]
    fn even_row_is_one_group() {
        assert_eq!(
            groups(4, &line(&[0.0, 10.0, 20.0, 30.0])),
            [0, 0, 0, 0],
            "one row"
        );
    }

    #[test]
    fn order_of_links_does_not_matter() {
        let mut links = line(&[0.0, 9.0, 20.0, 70.0, 75.0, 90.0]);
        let found = groups(6, &links);
        links.reverse();
        assert_eq!(groups(6, &links), found, "the same groups");
    }

    #[test]
    fn without_links_each_is_alone() {
        assert_eq!(groups(3, &[]), [0, 1, 2], "three groups");
        assert!(groups(0, &[]).is_empty(), "no pieces");
        let bad = [
            Link {
                a: 0,
                b: 9,
                gap: 1.0,
            },
            Link {
                a: 0,
                b: 1,
                gap: f64::NAN,
            },
        ];
        assert_eq!(groups(2, &bad), [0, 1], "links to nowhere");
    }
}
