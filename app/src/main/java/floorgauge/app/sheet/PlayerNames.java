package floorgauge.app.sheet;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Who the players of a film are, as far as someone has said so. */
@FunctionalInterface
public interface PlayerNames {

    /** Numbers of a film's tracks have few digits; a longer run is something else. */
    Pattern TRACK = Pattern.compile("#(\\d{1,6})(?!\\d)");

    /** A jersey number before a name. */
    Pattern NUMBER = Pattern.compile("^(\\d{1,2}) ");

    /** As many as a mark holds. */
    int MOST_LETTERS = 2;

    /**
     * A player's name as it is to be read, such as {@code 9 Dane Okoro}.
     *
     * @param filmSha256 the film's digest
     * @param trackId a track of it
     * @return the same text for the same person on every film; empty where nobody has said who it is
     */
    Optional<String> nameOf(String filmSha256, int trackId);

    /**
     * What stands in a player's mark, such as {@code 9}.
     *
     * @return his jersey number, else the first letters of his names; empty where nobody has said who it is
     */
    default Optional<String> markOf(String filmSha256, int trackId) {
        return nameOf(filmSha256, trackId).map(PlayerNames::mark);
    }

    private static String mark(String name) {
        Matcher number = NUMBER.matcher(name);
        return number.find()
                ? number.group(1)
                : Arrays.stream(name.split("\\s+", -1))
                        .limit(MOST_LETTERS)
                        .map(word -> word.substring(0, word.offsetByCodePoints(0, word.isEmpty() ? 0 : 1)))
                        .collect(Collectors.joining());
    }

    /**
     * A sentence of a finding with names in the place of its track numbers, where they are known.
     *
     * @param sentence such as {@code #2's down screen for #1}
     */
    default String in(String filmSha256, String sentence) {
        return TRACK.matcher(sentence)
                .replaceAll(match -> Matcher.quoteReplacement(
                        nameOf(filmSha256, Integer.parseInt(match.group(1))).orElse(match.group())));
    }

    /** Nobody's. */
    static PlayerNames none() {
        return (film, track) -> Optional.empty();
    }
}
