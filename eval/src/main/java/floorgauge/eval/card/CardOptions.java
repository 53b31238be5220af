package floorgauge.eval.card;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What a score card is made of.
 *
 * @param file to write
 * @param date to print
 * @param work folder in which films are rendered and kept
 * @param films how many of the held-out films are measured, at least 0
 * @param gym the folder of the real gym clips
 */
record CardOptions(Path file, String date, Path work, int films, Optional<Path> gym) {

    static final String USAGE = "score card: expected FILE DATE WORK [--films N] [--gym FOLDER]";

    /** @throws IllegalArgumentException with the usage where the arguments are not as expected */
    static CardOptions of(String[] arguments) {
        if (arguments.length < 3) {
            throw new IllegalArgumentException(USAGE);
        }
        int films = HeldOutFilms.ALL.size();
        Optional<Path> gym = Optional.empty();
        for (int i = 3; i < arguments.length; i += 2) {
            if (i + 1 == arguments.length) {
                throw new IllegalArgumentException(USAGE);
            }
            switch (arguments[i]) {
                case "--films" -> films = count(arguments[i + 1]);
                case "--gym" -> gym = Optional.of(Path.of(arguments[i + 1]));
                default -> throw new IllegalArgumentException(USAGE);
            }
        }
        return new CardOptions(Path.of(arguments[0]), arguments[1], Path.of(arguments[2]), films, gym);
    }

    private static int count(String word) {
        if (!word.matches("[0-9]{1,2}")) {
            throw new IllegalArgumentException(USAGE);
        }
        return Integer.parseInt(word);
    }

    /** The command that makes the same card again, without the user's own folders. */
    String command() {
        String some = films < HeldOutFilms.ALL.size() ? " --films " + films : "";
        return "eval/score-card" + some + (gym.isPresent() ? " --gym FOLDER" : "");
    }
}
