package floorgauge.eval.fit;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.standards.Setting;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Which settings decide which kind of finding, in the order in which they are fitted: events before the flags on them. */
final class FittableSettings {

    private static final Map<FindingKind, List<Setting>> BY_KIND = byKind();

    private FittableSettings() {}

    static Map<FindingKind, List<Setting>> all() {
        return BY_KIND;
    }

    private static Map<FindingKind, List<Setting>> byKind() {
        Map<FindingKind, List<Setting>> settings = new EnumMap<>(FindingKind.class);
        settings.put(
                FindingKind.SCREEN,
                List.of(
                        Setting.SCREEN_CANDIDATE_DISTANCE,
                        Setting.SCREEN_USER_SPEED,
                        Setting.SCREEN_DEFENDER_DISTANCE));
        settings.put(FindingKind.CUT, List.of(Setting.CUT_SPEED, Setting.CUT_TIME, Setting.CUT_DISTANCE));
        settings.put(FindingKind.OPEN_WINDOW, List.of(Setting.WINDOW_OPEN_DISTANCE, Setting.WINDOW_TIME));
        settings.put(FindingKind.WEAK_SCREEN, List.of(Setting.SCREEN_WEAK_QUALITY));
        settings.put(FindingKind.MISSED_SCREEN, List.of(Setting.SCREEN_MISSED_REACH, Setting.SCREEN_MISSED_TIME));
        settings.put(FindingKind.MOVING_SCREEN, List.of(Setting.SCREEN_SET_SPEED, Setting.SCREEN_SET_TIME));
        settings.put(FindingKind.LATE_PASS, List.of(Setting.PASS_ON_TIME));
        settings.put(FindingKind.MISSED_WINDOW, List.of(Setting.WINDOW_MISSED_TIME));
        settings.put(FindingKind.EARLY_CUT, List.of(Setting.CUT_EARLY_TIME));
        settings.put(FindingKind.LATE_CUT, List.of(Setting.CUT_LATE_TIME));
        settings.put(
                FindingKind.CROWDED_FLOOR, List.of(Setting.SPACING_CROWDED_DISTANCE, Setting.SPACING_CROWDED_TIME));
        settings.put(
                FindingKind.COLLAPSED_FLOOR, List.of(Setting.SPACING_COLLAPSED_AREA, Setting.SPACING_COLLAPSED_TIME));
        settings.put(FindingKind.STALLED_BALL, List.of(Setting.SPACING_STALLED_TIME, Setting.SPACING_STALLED_SPEED));
        settings.put(FindingKind.NO_OUTLET, List.of(Setting.DEFENCE_OUTLET_TIME));
        return Collections.unmodifiableMap(settings);
    }
}
