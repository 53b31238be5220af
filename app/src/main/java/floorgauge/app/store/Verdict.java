package floorgauge.app.store;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.RoleHolder;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * What the analyst decided about a subject.
 *
 * @param id chosen by who gives it, so that giving it twice counts once
 * @param subject what is judged: the id of a finding, or of something entered by hand
 * @param filmId its film
 * @param answer right, wrong or can't tell
 * @param kind as corrected
 * @param label as corrected; may be blank
 * @param fromSeconds start as corrected
 * @param toSeconds end as corrected, at or after the start
 * @param roles as corrected
 * @param grade 1 to 5, of screens above all; empty for none
 * @param note free text
 * @param author who
 */
public record Verdict(
        String id,
        String subject,
        String filmId,
        Answer answer,
        FindingKind kind,
        String label,
        double fromSeconds,
        double toSeconds,
        List<RoleHolder> roles,
        OptionalInt grade,
        String note,
        String author) {

    /** An answer. */
    public enum Answer {
        RIGHT("right"),
        WRONG("wrong"),
        CANT_TELL("can't tell");

        private final String words;

        Answer(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Longest note kept. */
    public static final int LONGEST_NOTE = 2000;

    private static final int LONGEST_LABEL = 60;
    private static final int LONGEST_ID = 64;

    public Verdict {
        Objects.requireNonNull(answer, "answer");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(author, "author");
        roles = List.copyOf(roles);
        label = label.strip();
        note = note.strip();
        if (!id.matches("[0-9A-Za-z-]{1," + LONGEST_ID + "}")) {
            throw new IllegalArgumentException("an id has letters, digits and dashes");
        }
        if (!(toSeconds >= fromSeconds && Double.isFinite(toSeconds) && Double.isFinite(fromSeconds))) {
            throw new IllegalArgumentException("it ends before it starts: " + fromSeconds + " to " + toSeconds + " s");
        }
        if (grade.isPresent() && (grade.getAsInt() < 1 || grade.getAsInt() > 5)) {
            throw new IllegalArgumentException("a grade lies in 1 to 5: " + grade.getAsInt());
        }
        if (note.length() > LONGEST_NOTE || label.length() > LONGEST_LABEL) {
            throw new IllegalArgumentException(
                    "the note has over " + LONGEST_NOTE + ", or the label over " + LONGEST_LABEL + " characters");
        }
    }
}
