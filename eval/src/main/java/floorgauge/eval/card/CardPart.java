package floorgauge.eval.card;

import java.util.Optional;
import java.util.stream.Stream;

/** A part of the card that is made by itself, and stays as it was when others are made again. */
enum CardPart {
    FILMS("films", "On rendered film"),
    GYM("gym", "On real film"),
    SCENES("scenes", "On scenes of the library");

    private final String word;
    private final String title;

    CardPart(String word, String title) {
        this.word = word;
        this.title = title;
    }

    /** As the command takes it. */
    String word() {
        return word;
    }

    /** As it stands over the part. */
    String title() {
        return title;
    }

    static Optional<CardPart> named(String word) {
        return Stream.of(values()).filter(p -> p.word.equals(word)).findFirst();
    }
}
