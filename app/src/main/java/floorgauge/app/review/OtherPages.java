package floorgauge.app.review;

import floorgauge.app.drawing.Svg;
import floorgauge.app.result.Cautions;
import floorgauge.app.sheet.Html;
import floorgauge.app.store.Films;
import floorgauge.app.store.Player;
import floorgauge.app.store.StoredFilm;
import java.util.List;
import java.util.Optional;

/** The smaller pages: the notice on first start, practices, players, keys, and what went wrong. */
final class OtherPages {

    private OtherPages() {}

    /** What must be read before the first film is opened. */
    static String before() {
        Html html = Frame.open("Before you begin", "start.js", "");
        html.open("header").element("h1", "Before you begin").close("header");
        html.element(
                "p",
                "class=\"lede\"",
                "Film of people is personal. Make sure that everyone on it, or for minors a parent or guardian, has agreed"
                        + " to be filmed and measured, and that the rules of your place, club and league allow it.");
        html.open("ul");
        html.element("li", "Film, figures and verdicts stay on this machine; the program sends nothing anywhere.");
        html.element("li", "Delete the film and its results when someone takes consent back.");
        Cautions.TEXT.forEach(caution -> html.element("li", caution));
        html.close("ul");
        html.open("p");
        html.element("button", "type=\"button\" id=\"agree\"", "I have read this, and we have consent");
        return Frame.close(html.close("p"));
    }

    static String practices(List<Films.Listed> films) {
        Html html = Frame.open("Practices", "start.js", "Practices");
        html.open("header").element("h1", "Practices").close("header");
        if (films.isEmpty()) {
            html.element("p", "No film is measured yet: run floorgauge measure on one, and start the page again.");
            return Frame.close(html);
        }
        html.open("table").open("thead").open("tr");
        for (String head : List.of("Day", "Practice", "Standards missed", "Judged")) {
            html.element("th", "scope=\"col\"", head);
        }
        html.close("tr").close("thead").open("tbody");
        for (Films.Listed listed : films) {
            StoredFilm film = listed.film();
            html.open("tr").element("td", Words.day(film)).open("th", "scope=\"row\"");
            html.open("a", "href=\"/practice/" + film.id() + "\"")
                    .text(film.title())
                    .close("a")
                    .text(film.simulated() ? " (simulated)" : "")
                    .close("th");
            html.element("td", String.valueOf(listed.flags())).element("td", String.valueOf(listed.judged()));
            html.close("tr");
        }
        return Frame.close(html.close("tbody").close("table"));
    }

    static String players(List<Player> players) {
        Html html = Frame.open("Players", "players.js", "Players");
        html.open("header").element("h1", "Players");
        html.element(
                "p",
                "class=\"lede\"",
                "The roster. Which track of a film is whom is said once a film, on the practice's page “Who is who”.");
        html.close("header");
        html.open("table", "id=\"roster\"").open("thead").open("tr");
        for (String head : List.of("Number", "Name", "Squad", "Position", "With the team", "")) {
            html.element("th", "scope=\"col\"", head);
        }
        html.close("tr").close("thead").open("tbody");
        players.forEach(p -> row(html, Optional.of(p)));
        row(html, Optional.empty());
        return Frame.close(html.close("tbody").close("table"));
    }

    private static void row(Html html, Optional<Player> player) {
        String id = player.map(Player::id).orElse("");
        String whose = player.map(Player::name).orElse("a new player");
        html.open("tr", "data-player=\"" + Svg.escape(id) + "\"");
        String number = player.filter(p -> p.number().isPresent())
                .map(p -> String.valueOf(p.number().getAsInt()))
                .orElse("");
        html.open("td");
        input(html, "number", "type=\"number\" min=\"0\" max=\"99\"", number, "Number of " + whose);
        html.close("td").open("td");
        input(
                html,
                "name",
                "maxlength=\"" + Player.LONGEST_NAME + "\"",
                player.map(Player::name).orElse(""),
                "Name of " + whose);
        html.close("td").open("td");
        input(html, "squad", "maxlength=\"40\"", player.map(Player::squad).orElse(""), "Squad of " + whose);
        html.close("td").open("td");
        input(html, "position", "maxlength=\"40\"", player.map(Player::position).orElse(""), "Position of " + whose);
        html.close("td").open("td", "data-head=\"With the team\"");
        html.markup("<input type=\"checkbox\" name=\"active\""
                + (player.map(Player::active).orElse(true) ? " checked" : "") + " aria-label=\"" + Svg.escape(whose)
                + " is with the team\">");
        html.close("td").open("td");
        html.open("button", "type=\"button\"").text(id.isEmpty() ? "Add" : "Keep");
        html.open("span", "class=\"unheard\"").text(" " + whose).close("span").close("button");
        if (!id.isEmpty()) {
            html.text(" ")
                    .open("a", "href=\"/player/" + Svg.escape(id) + "\"")
                    .text("Sheet")
                    .open("span", "class=\"unheard\"")
                    .text(" of " + whose)
                    .close("span")
                    .close("a");
        }
        html.close("td").close("tr");
    }

    private static void input(Html html, String name, String attributes, String value, String label) {
        html.markup("<input name=\"" + name + "\" " + attributes + " value=\"" + Svg.escape(value) + "\" aria-label=\""
                + Svg.escape(label) + "\">");
    }

    /** One page a player, to print. */
    static String player(Player player, List<String> sentences, List<String> findings) {
        Html html = Frame.open(player.name(), "start.js", "Players");
        html.open("header").element("p", "class=\"kicker\"", player.squad() + " · " + player.position());
        html.element("h1", player.called()).close("header");
        html.element("h2", "Over the season");
        html.open("ul");
        sentences.forEach(s -> html.element("li", s));
        html.close("ul");
        if (sentences.isEmpty()) {
            html.element("p", "Not enough is measured of this player yet.");
        }
        html.element("h2", "Costliest of the last practices");
        html.open("ol");
        findings.forEach(html::markup);
        html.close("ol");
        if (findings.isEmpty()) {
            html.element("p", "No standard was missed in what could be seen.");
        }
        return Frame.close(html);
    }

    static String keys() {
        Html html = Frame.open("Keys", "keyspage.js", "Keys");
        html.open("header").element("h1", "Keys");
        html.element(
                "p",
                "class=\"lede\"",
                "Every key can be changed or turned off. A key does nothing while you write in a field. The list opens with"
                        + " the key for it on every page.");
        html.close("header");
        html.open("p").open("label").markup("<input type=\"checkbox\" id=\"keys-on\"> ");
        html.text("Single keys are on").close("label").close("p");
        html.open("table", "id=\"key-table\"").open("thead").open("tr");
        html.element("th", "scope=\"col\"", "Does").element("th", "scope=\"col\"", "Key");
        html.close("tr").close("thead").open("tbody").close("tbody").close("table");
        html.open("p").element("button", "type=\"button\" id=\"keys-usual\"", "Back to the usual keys");
        return Frame.close(html.close("p"));
    }

    /** What went wrong, in a sentence. */
    static String sorry(int status, String why) {
        Html html = Frame.open("Not shown", "start.js", "");
        html.open("header").element("h1", "Not shown").close("header");
        html.element(
                "p", why.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + why.substring(1) + " (" + status + ").");
        return Frame.close(html);
    }
}
