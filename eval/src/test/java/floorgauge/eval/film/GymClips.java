package floorgauge.eval.film;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;

/** Where the gym clips lie: outside the project, in a folder named by the property floorgauge.gym. */
final class GymClips {

    private GymClips() {}

    /** The clips; the calling test is skipped where their folder is not given. */
    static GymFilm given() {
        String folder = System.getProperty("floorgauge.gym", "");
        assumeTrue(!folder.isBlank(), "skipped: give the gym clips' folder with -Dfloorgauge.gym=FOLDER");
        return new GymFilm(Path.of(folder));
    }
}
