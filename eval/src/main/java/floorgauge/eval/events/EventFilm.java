package floorgauge.eval.events;

import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.UnclearSpan;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The two sides of one film, ready to be matched.
 *
 * @param film its name
 * @param hours its length, at least 0
 * @param labels labelled events
 * @param results findings
 * @param unclear spans of which the annotator could not tell
 * @param identities from the result's tracks to labelled people; empty where there is no bridge
 */
public record EventFilm(
        String film,
        double hours,
        List<EventMark> labels,
        List<EventMark> results,
        List<UnclearSpan> unclear,
        Optional<Identities> identities) {

    public EventFilm {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(identities, "identities");
        labels = List.copyOf(labels);
        results = List.copyOf(results);
        unclear = List.copyOf(unclear);
        if (!(hours >= 0 && Double.isFinite(hours))) {
            throw new IllegalArgumentException("a length is at least 0: " + hours);
        }
    }

    /** This film with the events of one kind alone. */
    public EventFilm only(FindingKind kind) {
        return new EventFilm(
                film,
                hours,
                labels.stream().filter(m -> m.kind() == kind).toList(),
                results.stream().filter(m -> m.kind() == kind).toList(),
                unclear,
                identities);
    }

    /** This film with other findings. */
    public EventFilm with(List<EventMark> otherResults, Optional<Identities> otherIdentities) {
        return new EventFilm(film, hours, labels, otherResults, unclear, otherIdentities);
    }

    /** This film under another name. */
    public EventFilm named(String otherName) {
        return new EventFilm(otherName, hours, labels, results, unclear, identities);
    }

    /** One-to-one, within a tolerance. */
    public EventMatches match(EventTolerance tolerance) {
        return new EventMatcher(tolerance, identities).match(labels, results, unclear);
    }
}
