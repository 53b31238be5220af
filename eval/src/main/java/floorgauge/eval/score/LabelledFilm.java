package floorgauge.eval.score;

import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.sampleclips.labels.FilmLabels;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * What one annotator says of one film.
 *
 * @param file the label file
 * @param labels what it holds
 * @param tracks labelled tracks from the MOTChallenge text beside it; empty where there is none
 */
public record LabelledFilm(Path file, FilmLabels labels, Optional<MotChallengeFile> tracks) {

    public LabelledFilm {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(labels, "labels");
        Objects.requireNonNull(tracks, "tracks");
    }
}
