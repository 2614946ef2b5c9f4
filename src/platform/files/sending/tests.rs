//! Pieces, also after a restart, of several senders, and what is given up.

use super::*;
use crate::platform::files::{
    paper::{Media, Unfit},
    tests::png,
};

fn whose(person: i64, member: i64) -> Whose {
    (person.into(), member.into())
}

async fn append(files: &Files, token: &str, bytes: &[u8]) -> u64 {
    let sending = files.sending(whose(1, 2), token).await.expect("looked").expect("there");
    let mut piece = sending.open().await.expect("opened").expect("nobody else writes");
    piece.push(bytes).await.expect("written");
    piece.end().await.expect("on the disk")
}

#[tokio::test]
async fn pieces_are_put_together_also_by_a_house_that_was_started_again() {
    let data = tempfile::tempdir().expect("a folder");
    let photo = png(640, 480);
    let files = Files::under(data.path());
    let token = files.begin(whose(1, 2)).await.expect("room").expect("a token");
    assert_eq!(append(&files, &token, &photo[..9]).await, 9);
    let files = Files::under(data.path());
    files.clear_away();
    assert_eq!(append(&files, &token, &photo[9..]).await, photo.len() as u64);
    let sending = files.sending(whose(1, 2), &token).await.expect("looked").expect("there");
    let arrival = sending.whole().await.expect("read").expect("a picture");
    assert_eq!((arrival.sum.as_str(), arrival.media), (&*sha256(&photo), Media::Png));
    assert_eq!(arrival.bytes, photo.len() as i64);
    drop(arrival);
    // Let go, it is still there: the form may come once more.
    let arrival = sending.whole().await.expect("read").expect("a picture");
    files.settle(&arrival).await.expect("settled");
    assert_eq!(std::fs::read(files.lies(&arrival.sum)).expect("kept"), photo);
    assert!(files.sending(whose(1, 2), &token).await.expect("looked").is_none());
    sending.remove().await.expect("nothing is left");
}

#[tokio::test]
async fn nobody_else_comes_to_it_and_two_do_not_write_at_once() {
    let data = tempfile::tempdir().expect("a folder");
    let files = Files::under(data.path());
    let token = files.begin(whose(1, 2)).await.expect("room").expect("a token");
    for other in [whose(1, 3), whose(2, 2), whose(12, 2)] {
        assert!(files.sending(other, &token).await.expect("looked").is_none());
    }
    for odd in ["", "..", "../1-2/x", &sha256(token.as_bytes())] {
        assert!(files.sending(whose(1, 2), odd).await.expect("looked").is_none(), "{odd:?}");
    }
    let sending = files.sending(whose(1, 2), &token).await.expect("looked").expect("there");
    let first = sending.open().await.expect("opened");
    assert!(first.is_some() && sending.open().await.expect("opened").is_none());
    drop(first);
    let piece = sending.open().await.expect("opened").expect("free again");
    assert!(!piece.is_past(MOST_BYTES) && piece.is_past(MOST_BYTES + 1) && piece.at() == 0);
    assert_eq!(sending.whole().await.expect("read").expect_err("nothing"), Unfit::Empty);
}

#[tokio::test]
async fn so_many_at_once_and_a_day_later_they_are_given_up() {
    let data = tempfile::tempdir().expect("a folder");
    let files = Files::under(data.path());
    files.give_up_old(Instant::from_unix(0)).expect("nothing was ever sent");
    for _ in 0..MOST {
        assert!(files.begin(whose(1, 2)).await.expect("room").is_some());
    }
    assert!(files.begin(whose(1, 2)).await.expect("room").is_none());
    assert!(files.begin(whose(1, 3)).await.expect("room").is_some());
    let folder = fs::metadata(data.path().join("files/sending/1-2")).expect("there");
    let touched = folder.modified().expect("a time");
    let later = |seconds| Instant::new((touched + KEPT + Duration::from_secs(seconds)).into());
    files.give_up_old(later(0).minus(time::Duration::minutes(1))).expect("looked");
    assert!(files.begin(whose(1, 2)).await.expect("room").is_none());
    files.give_up_old(later(60)).expect("given up");
    assert!(files.begin(whose(1, 2)).await.expect("room").is_some());
}
