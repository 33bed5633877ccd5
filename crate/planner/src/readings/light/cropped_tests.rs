//! The light of a crop in view.
use super::tests::two;
use crate::readings::Study;
use crate::readings::samples::said;

#[test]
fn with_a_crop_in_view_its_dishes_alone_are_compared_and_exposed_as_the_picture_is() {
    use crate::layout::Id;
    use crate::readings::report;
    let mut layout = two();
    layout.light.distance = 1_000;
    let more = crate::layout::Item {
        id: Id(3),
        at: crate::layout::Point::new(700, 450),
        ..layout.items[1].clone()
    };
    layout.items.push(more);
    let file = layout.to_json().replace(
        "\"crops\": []",
        "\"crops\": [{\"id\":9,\"name\":\"right\",\"ratio\":[1,1],\"at\":[850,450],\"width\":500}]",
    );
    let layout = crate::layout::open(&file).expect("sound");
    assert_eq!(layout.crops.len(), 1, "a crop without the hero");
    let whole = said(&layout, "light").expect("three dishes");
    let found = report(&Study::new(&layout).viewing(Id(9)), true).findings;
    let right = found.iter().find(|f| f.key == "light").expect("two dishes");
    assert!(
        right.figure < whole.figure,
        "{} and {}",
        right.figure,
        whole.figure
    );
    assert_eq!(right.about.len(), 2, "{}", right.sentence);
    assert!(!right.about.contains(&Id(1)), "the hero is not in it");
    // Each of them is as many stops under the hero as in the whole picture.
    for line in right.working.iter().filter(|l| l.contains("dish")) {
        assert!(whole.working.contains(line), "{line}: {:?}", whole.working);
    }
    assert!(right.working[0].contains("“right”"), "{:?}", right.working);
}
