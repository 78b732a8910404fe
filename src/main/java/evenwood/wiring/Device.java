package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.Input;
import evenwood.rig.Pickup;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Power;
import evenwood.rig.SignalKind;
import java.util.OptionalDouble;

/** One thing with sockets in the chain. */
public sealed interface Device {
    String name();

    /** Whether it meets the mains earth. */
    boolean earthed();

    /** Something a signal comes out of. */
    sealed interface Giving extends Device {
        SignalKind output();

        boolean outputBalanced();

        /** Highest peak it can give, unloaded; empty when nothing limits it. */
        OptionalDouble maximumOutputDbu();
    }

    /** Something a signal goes into. */
    sealed interface Taking extends Device {
        SignalKind accepts();

        boolean inputBalanced();

        /** Highest peak it takes as it stands; empty when nothing limits it. */
        OptionalDouble maximumInputDbu();
    }

    /** The pickup. */
    record Source(Pickup pickup) implements Giving {
        @Override
        public String name() {
            return pickup.name();
        }

        @Override
        public boolean earthed() {
            return false;
        }

        @Override
        public SignalKind output() {
            return pickup.output();
        }

        @Override
        public boolean outputBalanced() {
            return pickup.balanced();
        }

        @Override
        public OptionalDouble maximumOutputDbu() {
            return pickup.maximumDbu();
        }
    }

    /** A box between. */
    record Between(PluggedBox plugged) implements Giving, Taking {
        public Box box() {
            return plugged.box();
        }

        @Override
        public String name() {
            return box().name();
        }

        @Override
        public boolean earthed() {
            return box().earthed();
        }

        @Override
        public SignalKind output() {
            return box().output();
        }

        @Override
        public boolean outputBalanced() {
            return box().outputBalanced();
        }

        @Override
        public OptionalDouble maximumOutputDbu() {
            return box().maximumOutputDbu();
        }

        /** A balanced box without an amplifier is for microphone or line; every other takes an instrument. */
        @Override
        public SignalKind accepts() {
            return switch (box().kind()) {
                case PAD, MIXER_CHANNEL -> SignalKind.MICROPHONE;
                case ISOLATOR -> SignalKind.LINE;
                case PASSIVE_DI, ACTIVE_DI, PREAMP, AMP -> SignalKind.INSTRUMENT;
            };
        }

        @Override
        public boolean inputBalanced() {
            return box().inputBalanced();
        }

        @Override
        public OptionalDouble maximumInputDbu() {
            return box().maximumInputDbu().isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(box().maximumInputDbu().getAsDouble() + plugged.padDb());
        }

        /** It needs power and was given none. */
        public boolean starved() {
            return box().power() != Power.NONE && plugged.powered() == Power.NONE;
        }
    }

    /** The input at the end. */
    record End(PluggedInput plugged) implements Taking {
        public Input input() {
            return plugged.input();
        }

        @Override
        public String name() {
            return input().name();
        }

        @Override
        public boolean earthed() {
            return input().earthed();
        }

        @Override
        public SignalKind accepts() {
            return input().accepts();
        }

        @Override
        public boolean inputBalanced() {
            return input().balanced();
        }

        @Override
        public OptionalDouble maximumInputDbu() {
            return OptionalDouble.of(input().maximumDbu());
        }
    }
}
