package floorgauge.sampleclips.labels;

import floorgauge.court.rules.CourtEnd;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * All that one annotator says of one film. Times are in seconds of the film's own presentation time.
 *
 * @param film which film; empty for the truth of a scene that was not drawn
 * @param scene which scene was drawn; empty for film of real play
 * @param annotator who, or {@link #TRUTH}
 * @param guidelineVersion of the labelling guideline that was followed
 * @param rules name of the rule set of the court
 * @param end the rim under attack; empty where a film shows both
 * @param people everyone who is named in a role, ids unique
 * @param possessions in order of time
 * @param events in order of time
 * @param unclear spans in which this annotator could not tell what happened: neither events nor their absence count there
 */
public record FilmLabels(
        Optional<FilmReference> film,
        Optional<SceneReference> scene,
        String annotator,
        int guidelineVersion,
        String rules,
        Optional<CourtEnd> end,
        List<LabelledPerson> people,
        List<LabelledPossession> possessions,
        List<LabelledEvent> events,
        List<UnclearSpan> unclear) {

    /** Version of the format; a reader refuses others. */
    public static final int SCHEMA_VERSION = 1;

    /** Version of the labelling guideline that this code was written with. */
    public static final int GUIDELINE_VERSION = 1;

    /** The annotator of labels that come from the exact motion of a scene. */
    public static final String TRUTH = "scene truth";

    public FilmLabels {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(scene, "scene");
        Objects.requireNonNull(annotator, "annotator");
        Objects.requireNonNull(rules, "rules");
        Objects.requireNonNull(end, "end");
        people = List.copyOf(people);
        possessions = List.copyOf(possessions);
        events = List.copyOf(events);
        unclear = List.copyOf(unclear);
        Set<Integer> ids = new HashSet<>();
        for (LabelledPerson person : people) {
            if (!ids.add(person.id())) {
                throw new IllegalArgumentException("two people have id " + person.id());
            }
        }
        for (LabelledEvent event : events) {
            event.roles().forEach(holder -> {
                if (!ids.contains(holder.trackId())) {
                    throw new IllegalArgumentException(
                            "event " + event.id() + " names person " + holder.trackId() + ", who is not listed");
                }
            });
        }
    }

    /** These labels for a film that the scene was drawn to. */
    public FilmLabels of(FilmReference drawn) {
        return new FilmLabels(
                Optional.of(drawn),
                scene,
                annotator,
                guidelineVersion,
                rules,
                end,
                people,
                possessions,
                events,
                unclear);
    }
}
