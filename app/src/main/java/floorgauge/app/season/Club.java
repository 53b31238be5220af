package floorgauge.app.season;

import floorgauge.app.store.Player;
import java.util.List;
import java.util.OptionalInt;

/** The invented Tidewater Lanterns, in two practice squads of six. Nobody of these names is meant. */
final class Club {

    static final String NAME = "Tidewater Lanterns";

    static final String LIGHT = "light squad";

    static final String DARK = "dark squad";

    /** Five places of each squad in order, guards to centre, then who comes in for the wing and the centre. */
    private static final List<Player> LIGHT_SQUAD = List.of(
            player("ilo-marsh", "Ilo Marsh", 4, LIGHT, "point guard"),
            player("dane-okoro", "Dane Okoro", 9, LIGHT, "guard"),
            player("petr-alvine", "Petr Alvine", 15, LIGHT, "wing"),
            player("sunny-brack", "Sunny Brack", 23, LIGHT, "forward"),
            player("tomas-quill", "Tomas Quill", 31, LIGHT, "centre"),
            player("juno-castell", "Juno Castell", 44, LIGHT, "centre"));

    private static final List<Player> DARK_SQUAD = List.of(
            player("rafe-lindqvist", "Rafe Lindqvist", 5, DARK, "point guard"),
            player("obi-tarrow", "Obi Tarrow", 8, DARK, "guard"),
            player("kit-sandoval", "Kit Sandoval", 12, DARK, "wing"),
            player("maro-fenn", "Maro Fenn", 20, DARK, "forward"),
            player("ellis-voss", "Ellis Voss", 33, DARK, "centre"),
            player("noor-hadley", "Noor Hadley", 50, DARK, "centre"));

    private static final int CENTRE = 4;
    private static final int SECOND_CENTRE = 5;

    private Club() {}

    private static Player player(String id, String name, int number, String squad, String position) {
        return new Player(id, name, OptionalInt.of(number), squad, position, true);
    }

    /** Everyone, the light squad first. */
    static List<Player> players() {
        return java.util.stream.Stream.concat(LIGHT_SQUAD.stream(), DARK_SQUAD.stream())
                .toList();
    }

    /** The five who play, by place; the second centre plays for the first where asked. */
    static List<Player> five(boolean light, boolean secondCentre) {
        List<Player> squad = light ? LIGHT_SQUAD : DARK_SQUAD;
        return List.of(
                squad.get(0),
                squad.get(1),
                squad.get(2),
                squad.get(3),
                squad.get(secondCentre ? SECOND_CENTRE : CENTRE));
    }

    /** The track of a player on every simulated film: the place on the list, from 1. */
    static int track(Player player) {
        return players().indexOf(player) + 1;
    }
}
