package floorgauge.eval.card;

import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * What a score card is made of.
 *
 * @param file to write; the parts that are not made anew stay as they are in it
 * @param date to print
 * @param work folder in which films are rendered and kept
 * @param films how many of the held-out films are measured, at least 0
 * @param gym the folder of the real gym clips, given where their part is made
 * @param parts that are made anew
 */
record CardOptions(Path file, String date, Path work, int films, Optional<Path> gym, Set<CardPart> parts) {

    static final String USAGE =
            "score card: expected FILE DATE WORK [--only films|gym|scenes[,...]] [--films N] [--gym FOLDER];"
                    + " --only gym needs --gym";

    CardOptions {
        parts = Collections.unmodifiableSet(EnumSet.copyOf(parts));
    }

    /** @throws IllegalArgumentException with the usage where the arguments are not as expected */
    static CardOptions of(String[] arguments) {
        if (arguments.length < 3) {
            throw new IllegalArgumentException(USAGE);
        }
        int films = HeldOutFilms.ALL.size();
        Optional<Path> gym = Optional.empty();
        Optional<Set<CardPart>> only = Optional.empty();
        for (int i = 3; i < arguments.length; i += 2) {
            if (i + 1 == arguments.length) {
                throw new IllegalArgumentException(USAGE);
            }
            switch (arguments[i]) {
                case "--films" -> films = count(arguments[i + 1]);
                case "--gym" -> gym = Optional.of(Path.of(arguments[i + 1]));
                case "--only" -> only = Optional.of(parts(arguments[i + 1]));
                default -> throw new IllegalArgumentException(USAGE);
            }
        }
        Set<CardPart> parts = only.orElse(asked(films, gym));
        if (parts.contains(CardPart.GYM) && gym.isEmpty() || parts.contains(CardPart.FILMS) && films == 0) {
            throw new IllegalArgumentException(USAGE);
        }
        return new CardOptions(Path.of(arguments[0]), arguments[1], Path.of(arguments[2]), films, gym, parts);
    }

    /** All that can be made from what is given. */
    private static Set<CardPart> asked(int films, Optional<Path> gym) {
        Set<CardPart> parts = EnumSet.of(CardPart.SCENES);
        if (films > 0) {
            parts.add(CardPart.FILMS);
        }
        if (gym.isPresent()) {
            parts.add(CardPart.GYM);
        }
        return parts;
    }

    private static Set<CardPart> parts(String words) {
        Set<CardPart> parts = EnumSet.noneOf(CardPart.class);
        for (String word : words.split(",", -1)) {
            parts.add(CardPart.named(word).orElseThrow(() -> new IllegalArgumentException(USAGE)));
        }
        return parts;
    }

    private static int count(String word) {
        if (!word.matches("[0-9]{1,2}")) {
            throw new IllegalArgumentException(USAGE);
        }
        return Integer.parseInt(word);
    }

    /** The command that makes one part of the card, without the user's own folders. */
    static String command(CardPart part) {
        return "eval/score-card --only " + part.word() + (part == CardPart.GYM ? " --gym FOLDER" : "");
    }

    /** The command that makes a part of this card again. */
    String commandOf(CardPart part) {
        boolean some = part == CardPart.FILMS && films < HeldOutFilms.ALL.size();
        return command(part) + (some ? " --films " + films : "");
    }
}
