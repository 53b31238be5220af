package floorgauge.app.chain;

import floorgauge.vision.network.Precision;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What was asked for on the command line.
 *
 * @param points court points for all films
 * @param saved a court saved from another film of the same camera place
 * @param court name of a rule book
 * @param standards the team's standards
 * @param playersPerSide how many of each team are on the floor; empty to find out from the film
 * @param precision in which poses are computed; empty to let this machine choose once
 * @param scripts names of shipped scripts, or script files; none to hold possessions against no script
 */
public record ChainOptions(
        Optional<Path> points,
        Optional<Path> saved,
        Optional<String> court,
        Optional<Path> standards,
        OptionalInt playersPerSide,
        Optional<Precision> precision,
        List<String> scripts) {

    public ChainOptions {
        scripts = List.copyOf(scripts);
        Objects.requireNonNull(points, "points");
        Objects.requireNonNull(saved, "saved");
        Objects.requireNonNull(court, "court");
        Objects.requireNonNull(standards, "standards");
        Objects.requireNonNull(playersPerSide, "playersPerSide");
        Objects.requireNonNull(precision, "precision");
    }
}
