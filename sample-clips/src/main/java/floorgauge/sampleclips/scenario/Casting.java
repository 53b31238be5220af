package floorgauge.sampleclips.scenario;

import floorgauge.court.track.Team;
import floorgauge.sampleclips.scene.Kit;
import floorgauge.sampleclips.scene.Person;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Who plays: members of the invented Tidewater Lanterns, in two practice kits. Heights follow the usual order of positions, guards
 * to centre (common practice).
 */
final class Casting {

    private static final List<String> NAMES = List.of(
            "Ilo Marsh",
            "Dane Okoro",
            "Petr Alvine",
            "Sunny Brack",
            "Tomas Quill",
            "Juno Castell",
            "Rafe Lindqvist",
            "Obi Tarrow",
            "Kit Sandoval",
            "Maro Fenn",
            "Ellis Voss",
            "Noor Hadley",
            "Cato Brisk",
            "Wim Saltor",
            "Yuri Penhallow",
            "Lars Oduya");
    private static final double[] HEIGHTS = {1.85, 1.90, 1.97, 2.02, 2.08};
    private static final double[] BUILDS = {0.95, 0.97, 1.0, 1.08, 1.12};
    private static final int[] SKINS = {0x5A3A28, 0x7A4E34, 0x9C6B4A, 0xC48E6A, 0xE0B08E, 0xF0CBB0};
    private static final int[] HAIRS = {0x14110F, 0x241A14, 0x3A281C, 0x5C4026, 0x8A6A3C};
    /** Shirt, shorts and number of a pair of practice kits, light and dark. */
    private static final int[][] KITS = {
        {0xF2F2EE, 0xF2F2EE, 0x1B2A4A, 0x1B2A4A, 0x1B2A4A, 0xF2F2EE},
        {0xE8E4D8, 0x202020, 0x202020, 0xA31F2B, 0x202020, 0xF4F0E4},
        {0xF0C330, 0x1F1F1F, 0x1F1F1F, 0x2B2B30, 0x2B2B30, 0xF0C330},
        {0xEDEDED, 0x14502E, 0x14502E, 0x14502E, 0x14502E, 0xEDEDED},
        {0xBFD7EA, 0x24344D, 0x24344D, 0x5B2A86, 0x5B2A86, 0xFFFFFF},
        {0xF4F4F4, 0x3A3A3A, 0xC2410C, 0xC2410C, 0x3A3A3A, 0xFFFFFF},
    };

    private static final int[] SHOES = {0xF5F5F5, 0x1A1A1A, 0xC0392B, 0x2E6DA4, 0xE5E1D6};

    private Casting() {}

    /** People by role; ids count from 1, attackers first. */
    static SortedMap<Role, Person> cast(Scenario scenario, Variation variation) {
        Random random = variation.random("cast");
        List<String> names = new ArrayList<>(NAMES);
        Collections.shuffle(names, random);
        int[] pair = KITS[random.nextInt(KITS.length)];
        boolean lightAttacks = random.nextBoolean();
        SortedMap<Role, Person> people = new TreeMap<>();
        int n = scenario.playersASide();
        int id = 0;
        for (boolean defends : new boolean[] {false, true}) {
            List<Integer> numbers = numbers(random);
            int kit = defends == lightAttacks ? 3 : 0;
            for (Role attacker : scenario.attack().keySet()) {
                Role role = new Role(defends, attacker.number());
                int place = role.number() - 1;
                Optional<CastDetail> detail =
                        Optional.ofNullable(scenario.cast().get(role));
                double height = HEIGHTS[place] + 0.03 * bounded(random.nextGaussian());
                double build = BUILDS[place] + 0.04 * bounded(random.nextGaussian());
                int skin = SKINS[random.nextInt(SKINS.length)];
                int hair = HAIRS[random.nextInt(HAIRS.length)];
                int shoes = SHOES[random.nextInt(SHOES.length)];
                id++;
                people.put(
                        role,
                        new Person(
                                id,
                                detail.map(d -> d.number().orElse(-1))
                                        .filter(x -> x >= 0)
                                        .orElse(numbers.get(place)),
                                detail.flatMap(CastDetail::name).orElse(names.get((defends ? n : 0) + place % n)),
                                defends ? Team.SECOND : Team.FIRST,
                                detail.map(d -> d.heightMetres().orElse(height)).orElse(height),
                                detail.map(d -> d.build().orElse(build)).orElse(build),
                                detail.map(d -> d.skinRgb().orElse(skin)).orElse(skin),
                                hair,
                                new Kit(
                                        detail.map(d -> d.shirtRgb().orElse(pair[kit]))
                                                .orElse(pair[kit]),
                                        pair[kit + 1],
                                        pair[kit + 2],
                                        shoes)));
            }
        }
        return people;
    }

    private static List<Integer> numbers(Random random) {
        List<Integer> numbers = new ArrayList<>();
        while (numbers.size() < 5) {
            int number = 4 + random.nextInt(50);
            if (!numbers.contains(number)) {
                numbers.add(number);
            }
        }
        return numbers;
    }

    private static double bounded(double gaussian) {
        return Math.max(-2, Math.min(2, gaussian));
    }
}
