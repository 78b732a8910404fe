package evenwood.ui.scale;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChainPlacesTest {
    @ParameterizedTest
    @CsvSource({"3, 1200, 14, true", "4, 1200, 14, true", "4, 1200, 28, false", "6, 1200, 14, false", "2, 600, 14, true", "3, 600, 28, false"})
    void thingsStandSideBySideWhereThereIsRoomAndNeverLeaveIt(int things, double width, double em, boolean across) {
        ChainPlaces places = ChainPlaces.of(List.of(things, 2), width, em);

        assertThat(places.across()).isEqualTo(across);
        for (int way = 0; way < 2; way++) {
            assertThat(places.joints().get(way)).hasSize(places.things().get(way).size() - 1);
            assertThat(places.things().get(way)).allSatisfy(place -> {
                assertThat(place.x() + place.width()).isLessThanOrEqualTo(width);
                assertThat(place.y() + place.height()).isLessThanOrEqualTo(places.heightPx());
            });
        }
    }

    @ParameterizedTest
    @CsvSource({"1200, 14", "600, 28"})
    void noThingLiesOnAJoint(double width, double em) {
        ChainPlaces places = ChainPlaces.of(List.of(4), width, em);

        for (ChainPlaces.Place joint : places.joints().get(0)) {
            assertThat(places.things().get(0)).noneMatch(thing -> thing.holds(joint.middleX(), joint.middleY()));
        }
    }

    /** Pickup, three boxes, input; box 1 is dragged over the middle of the thing that is named. */
    @ParameterizedTest
    @CsvSource({"0, 0", "1, 0", "2, 1", "3, 1", "4, 2", "5, 2"})
    void aBoxLetGoAfterTheMiddleOfAnotherComesAfterIt(int after, int expected) {
        ChainPlaces places = ChainPlaces.of(List.of(5), 2400, 14);
        double x = after == 0 ? 1 : places.things().get(0).get(after - 1).middleX() + 1;

        assertThat(places.dropped(1, 3, x, 10)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"1200, 14", "500, 14"})
    void whereABoxLandsIsShownBetweenItsNewNeighbours(double width, double em) {
        ChainPlaces places = ChainPlaces.of(List.of(4), width, em);

        assertThat(places.landing(0, 0)).isEmpty();
        assertThat(places.landing(0, 1)).contains(places.joints().get(0).get(2));
        assertThat(places.landing(1, 0)).contains(places.joints().get(0).get(0));
    }
}
