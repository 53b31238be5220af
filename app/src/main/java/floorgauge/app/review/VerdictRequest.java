package floorgauge.app.review;

import com.fasterxml.jackson.databind.JsonNode;
import floorgauge.app.result.FindingText;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.Subject;
import floorgauge.app.store.Verdict;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.RoleHolder;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A verdict as the page sends it. What a quick answer leaves out is taken from what is judged.
 *
 * @param json the request
 */
record VerdictRequest(JsonNode json) {

    private static final String AUTHOR = "analyst";
    private static final int MOST_ROLES = 12;

    /** What is judged, as it stands now. */
    record Standing(
            String subject,
            String filmId,
            FindingKind kind,
            String label,
            double from,
            double to,
            List<RoleHolder> roles,
            OptionalInt grade,
            String note) {

        /** As it was measured. */
        static Standing of(StoredFinding f) {
            Finding found = f.finding();
            return unjudged(
                    f.id(),
                    f.filmId(),
                    found.kind(),
                    found.label(),
                    found.fromSeconds(),
                    found.toSeconds(),
                    found.roles());
        }

        /** As its verdict left it, where it has one. */
        static Standing of(Subject s) {
            return s.verdict()
                    .map(Standing::of)
                    .orElse(unjudged(
                            s.id(), s.filmId(), s.kind(), s.label(), s.fromSeconds(), s.toSeconds(), s.roles()));
        }

        /** Without grade and note. */
        static Standing unjudged(
                String subject,
                String filmId,
                FindingKind kind,
                String label,
                double from,
                double to,
                List<RoleHolder> roles) {
            return new Standing(subject, filmId, kind, label, from, to, roles, OptionalInt.empty(), "");
        }

        /** As a verdict left it. */
        static Standing of(Verdict v) {
            return new Standing(
                    v.subject(),
                    v.filmId(),
                    v.kind(),
                    v.label(),
                    v.fromSeconds(),
                    v.toSeconds(),
                    v.roles(),
                    v.grade(),
                    v.note());
        }
    }

    /**
     * The verdict.
     *
     * @param tracks ids that roles may name
     * @param durationSeconds of the film
     * @throws IllegalArgumentException where the request is not one
     */
    Verdict on(Standing standing, Set<Integer> tracks, double durationSeconds) {
        double from = number("from", standing.from());
        double to = number("to", standing.to());
        if (from < -1 || to > durationSeconds + 1) {
            throw new IllegalArgumentException("the film runs from 0 to " + durationSeconds + " s");
        }
        List<RoleHolder> roles = json.has("roles") ? roles() : standing.roles();
        Set<Integer> unknown = roles.stream()
                .map(RoleHolder::trackId)
                .filter(id -> !tracks.contains(id))
                .collect(Collectors.toSet());
        if (json.has("roles") && !unknown.isEmpty()) {
            throw new IllegalArgumentException("no such track on this film: " + unknown);
        }
        return new Verdict(
                text("id", ""),
                standing.subject(),
                standing.filmId(),
                constant(Verdict.Answer.class, "answer"),
                json.has("kind") ? constant(FindingKind.class, "kind") : standing.kind(),
                text("label", standing.label()),
                from,
                to,
                roles,
                json.has("grade") ? grade() : standing.grade(),
                text("note", standing.note()),
                AUTHOR);
    }

    private <E extends Enum<E>> E constant(Class<E> type, String field) {
        try {
            return Enum.valueOf(type, text(field, ""));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("'" + field + "' is none of those there are", e);
        }
    }

    private OptionalInt grade() {
        int grade = json.path("grade").asInt();
        return grade == 0 ? OptionalInt.empty() : OptionalInt.of(grade);
    }

    private double number(String field, double otherwise) {
        return json.path(field).isNumber() ? json.get(field).doubleValue() : otherwise;
    }

    String text(String field, String otherwise) {
        return json.path(field).isTextual() ? json.get(field).asText() : otherwise;
    }

    private List<RoleHolder> roles() {
        List<RoleHolder> roles = new ArrayList<>();
        for (JsonNode role : json.path("roles")) {
            roles.add(new RoleHolder(
                    FindingText.roleOf(role.path("role").asText()),
                    role.path("track").asInt()));
        }
        if (roles.size() > MOST_ROLES) {
            throw new IllegalArgumentException("at most " + MOST_ROLES + " roles");
        }
        return roles;
    }
}
