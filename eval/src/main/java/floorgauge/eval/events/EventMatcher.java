package floorgauge.eval.events;

import floorgauge.eval.assignment.MostPairs;
import floorgauge.sampleclips.labels.UnclearSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Pairs labelled events and findings of one film, one to one and within kind: as many pairs as can be made, and among those
 * the ones nearest in time with most roles in common. A doubtful label, or a span of which the annotator could not tell, lets
 * off the findings that fall on it.
 *
 * @param tolerance when a finding may stand for a label
 * @param identities from the result's tracks to labelled people; empty where there is no bridge and roles are not compared
 */
public record EventMatcher(EventTolerance tolerance, Optional<Identities> identities) {

    public EventMatcher {
        Objects.requireNonNull(tolerance, "tolerance");
        Objects.requireNonNull(identities, "identities");
    }

    public EventMatches match(List<EventMark> labels, List<EventMark> results, List<UnclearSpan> unclear) {
        List<EventMark> certain = sorted(labels, l -> !l.doubtful() && !inside(l, unclear));
        List<EventMark> doubtful = sorted(labels, EventMark::doubtful);
        List<EventMark> found = sorted(results, r -> true);
        int[] match = MostPairs.match(candidates(certain, found), certain.size(), found.size());
        List<EventMatches.Pair> pairs = new ArrayList<>();
        List<EventMark> missed = new ArrayList<>();
        List<EventMark> left = new ArrayList<>(found);
        for (int i = 0; i < match.length; i++) {
            if (match[i] >= 0) {
                pairs.add(pair(certain.get(i), found.get(match[i])));
                left.remove(found.get(match[i]));
            } else {
                missed.add(certain.get(i));
            }
        }
        left.removeIf(r -> inside(r, unclear));
        return new EventMatches(pairs, missed, withoutDoubtful(doubtful, left));
    }

    /** The findings that no doubtful label lets off: what is certain has had its choice before. */
    private List<EventMark> withoutDoubtful(List<EventMark> doubtful, List<EventMark> left) {
        List<EventMark> wrong = new ArrayList<>(left);
        for (int match : MostPairs.match(candidates(doubtful, left), doubtful.size(), left.size())) {
            if (match >= 0) {
                wrong.remove(left.get(match));
            }
        }
        return wrong;
    }

    private List<MostPairs.Candidate> candidates(List<EventMark> labels, List<EventMark> results) {
        List<MostPairs.Candidate> candidates = new ArrayList<>();
        int first = 0;
        for (int i = 0; i < labels.size(); i++) {
            EventMark label = labels.get(i);
            while (first < results.size()
                    && results.get(first).momentSeconds() < label.momentSeconds() - tolerance.seconds()) {
                first++;
            }
            for (int j = first;
                    j < results.size() && results.get(j).momentSeconds() <= label.momentSeconds() + tolerance.seconds();
                    j++) {
                if (label.kind() == results.get(j).kind()) {
                    addCandidate(i, label, j, results.get(j), candidates);
                }
            }
        }
        return candidates;
    }

    private void addCandidate(int i, EventMark label, int j, EventMark result, List<MostPairs.Candidate> candidates) {
        double roles = RoleAgreement.of(label, result, identities).share();
        if (roles >= tolerance.roleShare()) {
            double apart = Math.abs(result.momentSeconds() - label.momentSeconds());
            double inTime = Math.max(0, 1 - apart / tolerance.seconds());
            candidates.add(new MostPairs.Candidate(i, j, (inTime + roles) / 2));
        }
    }

    private EventMatches.Pair pair(EventMark label, EventMark result) {
        RoleAgreement roles = RoleAgreement.of(label, result, identities);
        return new EventMatches.Pair(label, result, roles.compared(), roles.same());
    }

    private static boolean inside(EventMark mark, List<UnclearSpan> unclear) {
        return unclear.stream()
                .anyMatch(u -> mark.momentSeconds() >= u.fromSeconds() && mark.momentSeconds() <= u.toSeconds());
    }

    private static List<EventMark> sorted(List<EventMark> marks, Predicate<EventMark> which) {
        return marks.stream()
                .filter(which)
                .sorted(Comparator.comparingDouble(EventMark::momentSeconds).thenComparing(EventMark::id))
                .toList();
    }
}
