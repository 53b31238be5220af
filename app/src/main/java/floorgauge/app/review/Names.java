package floorgauge.app.review;

import floorgauge.app.store.Player;
import floorgauge.app.store.StoredTrack;
import floorgauge.events.diagram.PlayerLabels;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the tracks of a film are called: the player's name and number where the analyst said who it is, else the track. */
final class Names {

    private static final Pattern IN_A_SENTENCE = Pattern.compile("#(\\d+)");

    private final Map<Integer, Player> players = new TreeMap<>();

    Names(List<StoredTrack> tracks) {
        tracks.forEach(t -> t.player().ifPresent(p -> players.put(t.trackId(), p)));
    }

    Optional<Player> player(int trackId) {
        return Optional.ofNullable(players.get(trackId));
    }

    /** Such as {@code Quill (31)}, or {@code track 7}. */
    String of(int trackId) {
        return player(trackId).map(Names::shortly).orElse("track " + trackId);
    }

    /** In a player's mark: the jersey number, or the track's with a t before it. */
    String mark(int trackId) {
        return player(trackId)
                .filter(p -> p.number().isPresent())
                .map(p -> String.valueOf(p.number().getAsInt()))
                .orElse("t" + trackId);
    }

    PlayerLabels labels() {
        return this::mark;
    }

    /** A sentence of a finding with names in it. */
    String in(String sentence) {
        Matcher track = IN_A_SENTENCE.matcher(sentence);
        String named = track.replaceAll(m -> Matcher.quoteReplacement(of(Integer.parseInt(m.group(1)))));
        return named.isEmpty() ? named : named.substring(0, 1).toUpperCase(Locale.ROOT) + named.substring(1);
    }

    private static String shortly(Player player) {
        String[] words = player.name().split("\\s+", -1);
        String last = words[words.length - 1];
        return player.number().isPresent() ? last + " (" + player.number().getAsInt() + ")" : last;
    }
}
