package floorgauge.app.review;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import floorgauge.app.drawing.FigureText;
import floorgauge.app.sheet.Html;
import floorgauge.app.sheet.Phrases;
import floorgauge.app.store.Player;
import floorgauge.app.store.SeasonFigures;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Unit;
import floorgauge.events.trend.Interval;
import floorgauge.events.trend.Slope;
import floorgauge.events.trend.Trend;
import floorgauge.events.trend.TrendSubject;
import floorgauge.events.trend.Trends;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Figures over the weeks, by player, pair and line-up, each mark with its interval and count. */
final class TrendsPage {

    private static final ObjectMapper JSON = new ObjectMapper();

    /** 90 % of a normal distribution lie within this many standard errors. */
    private static final double NINETY = 1.645;

    private static final int LEAST_COUNT = 3;

    /** What a coach asks for first. */
    private static final List<String> FIRST = List.of("quality", "separation gained", "gap", "time lost", "delay");

    private final List<SeasonFigures.Marked> marks;
    private final List<Trend> trends;
    private final Map<String, Player> players;

    TrendsPage(List<SeasonFigures.Marked> marks, List<Player> players) {
        this.marks = marks;
        this.trends =
                Trends.of(marks.stream().map(SeasonFigures.Marked::observation).toList());
        this.players = players.stream().collect(Collectors.toMap(Player::id, Function.identity()));
    }

    /** A figure that is followed, for one role and for players, pairs or line-ups. */
    record Topic(Role role, FindingKind kind, String figure, int people, Unit unit) {

        static Topic of(TrendSubject subject) {
            return new Topic(
                    subject.role(),
                    subject.kind(),
                    subject.figure(),
                    Math.min(3, subject.who().size()),
                    subject.unit());
        }

        String key() {
            return role.name() + "." + kind.name() + "." + figure.replace(' ', '-') + "." + people;
        }

        String title() {
            String whose = people == 1 ? role.words() : people == 2 ? "pair" : "line-up";
            String words = figure.replace("quality: ", "part of quality: ");
            return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1) + ", by " + whose
                    + (people < 3 && kind == FindingKind.SCREEN ? ", of screens" : "");
        }
    }

    /** Topics with anything to draw, players' first. */
    List<Topic> topics() {
        return trends.stream()
                .filter(t -> t.count() >= LEAST_COUNT)
                .map(t -> Topic.of(t.subject()))
                .distinct()
                .sorted(Comparator.comparingInt(Topic::people)
                        .thenComparing(t -> t.figure().startsWith("quality: "))
                        .thenComparing(t -> t.role().ordinal())
                        .thenComparing(t -> FIRST.indexOf(t.figure()) < 0 ? FIRST.size() : FIRST.indexOf(t.figure()))
                        .thenComparing(Topic::figure))
                .toList();
    }

    String write(Optional<String> key) {
        Html html = Frame.open("Trends", "trends.js", "Trends");
        html.open("header").element("p", "class=\"kicker\"", "Season").element("h1", "Trends");
        html.element(
                "p",
                "class=\"lede\"",
                "A trend is called only where the interval of its slope leaves out zero. Intervals hold the true value in"
                        + " 9 of 10 cases; the count stands on every mark.");
        html.close("header");
        List<Topic> topics = topics();
        if (topics.isEmpty()) {
            html.element(
                    "p", "Nothing to show yet: say who is who on a practice, and its figures are counted for them.");
            return Frame.close(html);
        }
        Topic chosen = topics.stream()
                .filter(t -> key.filter(t.key()::equals).isPresent())
                .findFirst()
                .orElse(topics.get(0));
        choice(html, topics, chosen);
        html.open("section", "id=\"trends\" data-topic=\"" + chosen.key() + "\"")
                .element("h2", chosen.title());
        List<Trend> shown = of(chosen);
        shown.forEach(t -> trend(html, t));
        long few = trends.stream()
                .filter(t -> Topic.of(t.subject()).equals(chosen) && t.count() < LEAST_COUNT)
                .count();
        if (few > 0) {
            html.element(
                    "p",
                    "class=\"aside\"",
                    Phrases.counted(few, "other") + " with fewer than " + LEAST_COUNT + " are not drawn.");
        }
        return Frame.close(html.close("section"));
    }

    private List<Trend> of(Topic topic) {
        return trends.stream()
                .filter(t -> Topic.of(t.subject()).equals(topic) && t.count() >= LEAST_COUNT)
                .sorted(Comparator.comparing((Trend t) -> t.direction() == Trend.Direction.NONE)
                        .thenComparingInt(t -> -t.count())
                        .thenComparing(t -> who(t.subject())))
                .toList();
    }

    private static void choice(Html html, List<Topic> topics, Topic chosen) {
        html.open("form", "class=\"field\" action=\"/trends\" method=\"get\"")
                .element("label", "for=\"topic\"", "Figure");
        html.open("select", "id=\"topic\" name=\"topic\"");
        for (Topic topic : topics) {
            html.open("option", "value=\"" + topic.key() + "\"" + (topic.equals(chosen) ? " selected" : ""))
                    .text(topic.title())
                    .close("option");
        }
        html.close("select").element("button", "Show").close("form");
    }

    private void trend(Html html, Trend trend) {
        TrendSubject subject = trend.subject();
        html.open("article", "class=\"trend\" data-who=\"" + String.join(" ", subject.who()) + "\"");
        html.element("h3", who(subject));
        html.element("p", "class=\"sentence\"", sentence(trend));
        html.open("div", "class=\"chart\"").close("div");
        html.open("details").element("summary", "The marks as a table");
        html.open("table").open("thead").open("tr");
        for (String head : List.of("Practice", "Count", "Mean", "Interval")) {
            html.element("th", "scope=\"col\"", head);
        }
        html.close("tr").close("thead").open("tbody");
        days(subject).forEach((day, mark) -> {
            html.open("tr").open("th", "scope=\"row\"");
            html.open("a", "href=\"" + address(subject, day) + "\"")
                    .text(day.toString())
                    .close("a");
            html.close("th").element("td", String.valueOf(mark.count()));
            html.element("td", text(subject.unit(), mark.mean()));
            html.element("td", span(subject.unit(), mark.low(), mark.high()));
            html.close("tr");
        });
        html.close("tbody").close("table").close("details").close("article");
    }

    private static String sentence(Trend trend) {
        Unit unit = trend.subject().unit();
        String mean = "Mean " + text(unit, trend.mean())
                + trend.meanInterval().map(i -> " (" + interval(unit, i) + ")").orElse("") + " over "
                + Phrases.counted(trend.count(), "value") + " in "
                + Phrases.counted(trend.possessions(), "possession") + "; drawn toward the team's "
                + text(unit, trend.teamMean()) + ": " + text(unit, trend.shrunkMean()) + ". ";
        return mean + trend.slope().map(s -> slope(unit, s)).orElse("One day only, so no slope.");
    }

    private static String slope(Unit unit, Slope slope) {
        if (slope.interval().isEmpty()) {
            return "Too few days to call a trend: " + text(unit, slope.perWeek()) + " a week so far.";
        }
        String perWeek = text(unit, slope.perWeek()) + " a week"
                + slope.interval().map(i -> " (" + interval(unit, i) + ")").orElse("");
        return switch (slope.direction()) {
            case UP -> "Going up, " + perWeek + ".";
            case DOWN -> "Going down, " + perWeek + ".";
            case NONE -> "No trend: " + perWeek + ", which does not leave out zero.";
        };
    }

    private static String interval(Unit unit, Interval interval) {
        return span(unit, interval.low(), interval.high());
    }

    /** Such as {@code 64.1 to 76.2 of 100}: the unit stands once. */
    private static String span(Unit unit, double low, double high) {
        String last = text(unit, high);
        String first = text(unit, low);
        int signs = 0;
        while (signs < Math.min(first.length(), last.length())
                && !Character.isDigit(first.charAt(first.length() - 1 - signs))
                && first.charAt(first.length() - 1 - signs) == last.charAt(last.length() - 1 - signs)) {
            signs++;
        }
        return first.substring(0, first.length() - signs) + " to " + last;
    }

    private static String text(Unit unit, double value) {
        return unit == Unit.COUNT
                ? FigureText.decimal(value, 2)
                : unit == Unit.POINTS
                        ? FigureText.decimal(value, 1) + " of 100"
                        : FigureText.of(Figure.plain("", value, unit));
    }

    private String who(TrendSubject subject) {
        return subject.who().stream()
                .map(id ->
                        Optional.ofNullable(players.get(id)).map(Player::called).orElse("someone"))
                .collect(Collectors.joining(subject.who().size() == 2 ? " for " : ", "));
    }

    /** The values of one practice. */
    private record Day(int count, double mean, double low, double high) {}

    private Map<LocalDate, Day> days(TrendSubject subject) {
        Map<LocalDate, List<SeasonFigures.Marked>> byDay = marks.stream()
                .filter(m -> m.observation().subject().equals(subject))
                .collect(Collectors.groupingBy(m -> m.observation().day(), TreeMap::new, Collectors.toList()));
        Map<LocalDate, Day> days = new TreeMap<>();
        byDay.forEach((day, list) -> days.put(day, day(list)));
        return days;
    }

    /** The interval of a day's mean: from the spread of its values, and at least what their own errors make of it. */
    private static Day day(List<SeasonFigures.Marked> marks) {
        double n = marks.size();
        double mean = marks.stream()
                .mapToDouble(m -> m.observation().value())
                .average()
                .orElseThrow();
        double squares = marks.stream()
                .mapToDouble(m -> Math.pow(m.observation().value() - mean, 2))
                .sum();
        double errors = marks.stream()
                        .mapToDouble(m -> Math.pow(m.observation().standardError(), 2))
                        .sum()
                / (n * n);
        double spread = n > 1 ? squares / (n - 1) / n : 0;
        double reach = NINETY * Math.sqrt(Math.max(spread, errors));
        return new Day(marks.size(), mean, mean - reach, mean + reach);
    }

    private static String address(TrendSubject subject, LocalDate day) {
        return "/trends/marks?topic=" + encoded(Topic.of(subject).key()) + "&who="
                + encoded(String.join(" ", subject.who())) + "&day=" + day;
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** What the charts draw. */
    String data(Optional<String> key) {
        ObjectNode root = JSON.createObjectNode();
        marks.stream()
                .map(m -> m.observation().day())
                .min(Comparator.naturalOrder())
                .ifPresent(day -> root.put("first", seconds(day)));
        marks.stream()
                .map(m -> m.observation().day())
                .max(Comparator.naturalOrder())
                .ifPresent(day -> root.put("last", seconds(day)));
        ArrayNode list = root.putArray("trends");
        topics().stream()
                .filter(t -> key.filter(t.key()::equals).isPresent())
                .findFirst()
                .ifPresent(topic -> of(topic).forEach(t -> chart(list.addObject(), t)));
        return root.toString();
    }

    private static long seconds(LocalDate day) {
        return day.atStartOfDay().toEpochSecond(ZoneOffset.UTC);
    }

    private void chart(ObjectNode node, Trend trend) {
        TrendSubject subject = trend.subject();
        node.put("who", String.join(" ", subject.who()))
                .put("unit", subject.unit().symbol())
                .put("label", who(subject) + ", " + subject.figure());
        node.put("team", trend.teamMean());
        ArrayNode days = node.putArray("marks");
        days(subject)
                .forEach((day, mark) -> days.addObject()
                        .put("at", seconds(day))
                        .put("day", day.toString())
                        .put("count", mark.count())
                        .put("mean", mark.mean())
                        .put("low", mark.low())
                        .put("high", mark.high())
                        .put("address", address(subject, day)));
    }

    /** What stands behind a mark. */
    List<SeasonFigures.Marked> behind(String key, String who, LocalDate day) {
        return marks.stream()
                .filter(m -> Topic.of(m.observation().subject()).key().equals(key)
                        && String.join(" ", m.observation().subject().who()).equals(who)
                        && m.observation().day().equals(day))
                .toList();
    }

    /** The page of what stands behind a mark. */
    String writeBehind(String key, String who, LocalDate day) {
        List<SeasonFigures.Marked> list = behind(key, who, day);
        Html html = Frame.open("Behind a mark", "start.js", "Trends");
        html.open("header").element("p", "class=\"kicker\"", day.toString());
        html.element(
                "h1",
                list.isEmpty()
                        ? "Nothing stands behind this mark"
                        : who(list.get(0).observation().subject()));
        html.close("header").open("ol");
        for (SeasonFigures.Marked mark : list) {
            String address = mark.findingId().isEmpty()
                    ? "/practice/" + mark.filmId() + "#possession-" + mark.possession()
                    : "/finding/" + mark.findingId();
            html.open("li").open("a", "href=\"" + address + "\"");
            html.text("Possession " + mark.possession() + ": "
                    + mark.observation().subject().figure() + " "
                    + text(
                            mark.observation().subject().unit(),
                            mark.observation().value()));
            html.close("a").close("li");
        }
        return Frame.close(html.close("ol"));
    }

    /** A player's trends for a printed sheet: those whose first name is his. */
    List<String> sentences(String playerId) {
        return trends.stream()
                .filter(t -> t.subject().who().equals(List.of(playerId)) && t.count() >= LEAST_COUNT)
                .map(t -> Topic.of(t.subject()).title() + ": " + sentence(t))
                .toList();
    }
}
