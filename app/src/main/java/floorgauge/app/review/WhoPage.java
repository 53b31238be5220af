package floorgauge.app.review;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.Svg;
import floorgauge.app.sheet.Html;
import floorgauge.app.store.Player;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Suggestion;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.Team;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Which track of a film is whom. A suggestion is said, never set. */
final class WhoPage {

    private final StoredFilm film;
    private final List<StoredTrack> tracks;
    private final List<Player> players;
    private final Map<Integer, Suggestion> suggestions;

    WhoPage(StoredFilm film, List<StoredTrack> tracks, List<Player> players) {
        this.film = film;
        this.tracks = tracks;
        this.players = players;
        this.suggestions = Suggestion.of(tracks, players);
    }

    /** @param lost those whose track was not found again since the film was measured anew */
    String write(List<Player> lost) {
        Html html = Frame.open("Who is who", "players.js", "Players");
        head(html);
        if (!lost.isEmpty()) {
            html.element(
                    "p",
                    "class=\"not-seen\"",
                    "Not found again since the film was measured anew: "
                            + lost.stream().map(Player::called).collect(Collectors.joining(", ")) + ".");
        }
        html.open("table", "id=\"who\" data-film=\"" + film.id() + "\"")
                .open("thead")
                .open("tr");
        for (String head : List.of("Track", "Kit", "In view", "Suggested", "Is")) {
            html.element("th", "scope=\"col\"", head);
        }
        html.close("tr").close("thead").open("tbody");
        tracks.forEach(t -> row(html, t));
        return Frame.close(html.close("tbody").close("table"));
    }

    private void head(Html html) {
        html.open("header").element("p", "class=\"kicker\"", film.title() + (film.simulated() ? " · simulated" : ""));
        html.element("h1", "Who is who");
        html.element(
                "p",
                "class=\"lede\"",
                "Say once who each track is; it holds for the whole film, and is found again when the film is measured"
                        + " anew. What was read or remembered is a suggestion: nothing is set until you choose.");
        html.open("p", "class=\"ways\"")
                .open("a", "href=\"/practice/" + film.id() + "\"")
                .text("Back to the sheet")
                .close("a");
        if (suggestions.size() > 1) {
            html.element(
                    "button", "type=\"button\" id=\"take-all\"", "Yes to all " + suggestions.size() + " suggestions");
        }
        html.close("p").close("header");
    }

    private void row(Html html, StoredTrack track) {
        html.open("tr", "data-track=\"" + track.trackId() + "\"")
                .element("th", "scope=\"row\"", "track " + track.trackId());
        html.open("td");
        swatch(html, track.appearance().shirtRgb());
        html.text(kit(track)).close("td");
        html.element("td", FigureText.time(track.fromSeconds()) + " to " + FigureText.time(track.toSeconds()));
        html.open("td");
        Optional<Suggestion> suggested = Optional.ofNullable(suggestions.get(track.trackId()));
        html.text(told(track, suggested));
        suggested.ifPresent(s -> html.text(" ")
                .open(
                        "button",
                        "type=\"button\" class=\"take\" data-player=\""
                                + Svg.escape(s.player().id()) + "\"")
                .text("Yes, " + s.player().called())
                .close("button"));
        html.close("td").open("td");
        choice(html, track);
        html.close("td").close("tr");
    }

    /** The shirt's colour; words beside it say the kit. */
    private static void swatch(Html html, OptionalInt rgb) {
        if (rgb.isPresent()) {
            html.markup(String.format(
                    Locale.ROOT,
                    "<svg class=\"swatch\" viewBox=\"0 0 12 12\" aria-hidden=\"true\">"
                            + "<rect width=\"12\" height=\"12\" fill=\"#%06x\"/></svg>",
                    rgb.getAsInt()));
        }
    }

    private static String kit(StoredTrack track) {
        return switch (track.team()) {
            case FIRST -> "first kit, " + FigureText.sureness(track.teamProbability());
            case SECOND -> "second kit, " + FigureText.sureness(track.teamProbability());
            default -> track.team() == Team.OFFICIAL ? "official" : "not told";
        };
    }

    private static String told(StoredTrack track, Optional<Suggestion> suggested) {
        Optional<JerseyReading> read = track.appearance().jersey();
        String number = read.map(r -> "number " + r.number() + ", " + FigureText.sureness(r.probability()))
                .orElse("no number read");
        if (suggested.isPresent() && !suggested.get().byNumber()) {
            return number + "; wears a shirt like his";
        }
        boolean open = track.player().isEmpty() && suggested.isEmpty() && read.isPresent();
        return open ? number + "; not told whose" : number;
    }

    private void choice(Html html, StoredTrack track) {
        html.open("select", "aria-label=\"Track " + track.trackId() + " is\"");
        html.open("option", "value=\"\"").text("not said").close("option");
        for (Player player : players) {
            boolean chosen =
                    track.player().filter(p -> p.id().equals(player.id())).isPresent();
            html.open("option", "value=\"" + Svg.escape(player.id()) + "\"" + (chosen ? " selected" : ""))
                    .text(player.called())
                    .close("option");
        }
        html.close("select");
    }
}
