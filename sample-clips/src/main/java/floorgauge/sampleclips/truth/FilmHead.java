package floorgauge.sampleclips.truth;

import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.scene.Person;
import java.util.List;
import java.util.Objects;

/**
 * What is true of a whole rendered film.
 *
 * @param film file name, without folders
 * @param scenario name of the scene
 * @param seed that everything random was drawn from
 * @param cameraStyle in words
 * @param width pixels
 * @param height pixels
 * @param nominalFramesPerSecond the frames' own times stand with them
 * @param rules court in use
 * @param people everyone who appears, in order of id
 */
public record FilmHead(
        String film,
        String scenario,
        long seed,
        String cameraStyle,
        int width,
        int height,
        double nominalFramesPerSecond,
        RuleSet rules,
        List<Person> people) {

    public FilmHead {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(scenario, "scenario");
        Objects.requireNonNull(cameraStyle, "cameraStyle");
        Objects.requireNonNull(rules, "rules");
        people = List.copyOf(people);
    }
}
