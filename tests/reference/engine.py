"""One air engine with cam-driven spools, reckoned a second time with SciPy.

Written from docs/model.md and docs/conventions.md, not from the TypeScript: other language, other integrator (LSODA),
direct formulas instead of tables, another way to the settled cycle. Reads the engine's numbers (SI) as JSON from standard
input, writes the settled cycle's figures as JSON to standard output.
"""
import json
import sys

import numpy as np
from scipy.integrate import solve_ivp

E = json.load(sys.stdin)
TURN = 2 * np.pi
R, GAMMA = 287.05, 1.4
CV = R / (GAMMA - 1)
CP = GAMMA * CV
P0, T0 = E["room_pressure"], E["room_temperature"]
PS, TS = E["supply_pressure"], E["supply_temperature"]

# Cylinder and crank.
BORE, STROKE, ROD = E["bore"], E["stroke"], E["rod_length"]
CRANK = STROKE / 2
AREA = np.pi * BORE**2 / 4
CLEARANCE = E["clearance"] * AREA * STROKE
CHEST = E["chest_volume"] + np.pi / 4 * E["hose_bore"] ** 2 * E["hose_length"]


def travel(theta):
    return CRANK * (1 - np.cos(theta)) + ROD - np.sqrt(ROD**2 - (CRANK * np.sin(theta)) ** 2)


def lever(theta):
    s, c = np.sin(theta), np.cos(theta)
    return CRANK * s * (1 + CRANK * c / np.sqrt(ROD**2 - (CRANK * s) ** 2))


def bend(theta, step=1e-5):
    return (lever(theta + step) - lever(theta - step)) / (2 * step)


# Gas laws.
def viscosity(t):
    return 1.716e-5 * (t / 273.15) ** 1.5 * (273.15 + 110.4) / (t + 110.4)


def nozzle(area, p1, t1, p2):
    x = max(p2 / p1, (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1)))
    psi = np.sqrt(max(0.0, 2 * GAMMA / ((GAMMA - 1) * R) * (x ** (2 / GAMMA) - x ** ((GAMMA + 1) / GAMMA))))
    return area * p1 / np.sqrt(t1) * psi


def iso6358(c, b, p1, t1, p2):
    x = p2 / p1
    phi = 1.0 if x <= b else np.sqrt(max(0.0, 1 - ((x - b) / (1 - b)) ** 2))
    return c * p1 * 1.185 * np.sqrt(293.15 / t1) * phi


def gap(z, section, p1, t1, p2):
    a, b, d = 24 * viscosity(t1) * R * t1 * z, 1.5 * R * t1 / section**2, p1**2 - p2**2
    root = (-a + np.sqrt(a * a + 4 * b * d)) / (2 * b)
    choked = 0.8 * section * p1 / np.sqrt(t1) * np.sqrt(GAMMA / R * (2 / (GAMMA + 1)) ** ((GAMMA + 1) / (GAMMA - 1)))
    return min(root, choked)


def two_way(law, pa, ta, pb, tb):
    """Mass flow a -> b and its enthalpy flow."""
    flow = law(pa, ta, pb) if pa >= pb else -law(pb, tb, pa)
    return flow, flow * CP * (ta if flow >= 0 else tb)


# Spools and their cams.
class Spool:
    def __init__(self, own, discharge):
        self.__dict__.update(own)
        self.a = self.hole_diameter / 2
        self.cd = discharge
        crack = self.lash + self.lap
        share = np.arccos(1 - 2 * crack / self.lift_full) / np.pi  # harmonic law inverted
        lead = share * self.flank
        self.begin = self.opens - lead
        self.length = (self.closes - self.opens) % TURN + 2 * lead

    def lift(self, theta):
        since = (theta - self.begin) % TURN
        u = min(since, self.length - since) / self.flank
        if u <= 0:
            return 0.0
        cam = self.lift_full * (1.0 if u >= 1 else (1 - np.cos(np.pi * u)) / 2)
        return max(0.0, cam - self.lash)

    def below(self, z):
        z = min(self.a, max(-self.a, z))
        return self.a**2 * np.arccos(-z / self.a) + z * np.sqrt(self.a**2 - z * z)

    def area(self, theta):
        edge = self.lift(theta) - self.a - self.lap
        mouth = self.cd * (self.below(edge) - self.below(edge - self.waist_length))
        if mouth <= 0:
            return 0.0
        around = self.cd * (self.spool_diameter - self.waist_diameter) * self.waist_length
        return 1 / np.sqrt(2 / mouth**2 + 1 / around**2)

    def film(self, shape):
        return 1 / (shape * self.clearance**3)

    def along(self, land):
        d, w = self.spool_diameter, self.hole_diameter
        return np.pi / np.arctanh(np.sqrt(np.tanh(land / d) / np.tanh((land + w) / d)))

    def shut(self, theta):
        d, w = self.spool_diameter, self.hole_diameter
        land = max(self.lap - self.lift(theta), self.clearance)
        both = np.pi / (2 * np.arctanh(np.sqrt(np.sinh(2 * land / d) / np.sinh(2 * (land + w) / d))))
        around = np.pi / np.log(1 / np.tan(self.a / d))
        return self.film(around + self.loose() * max(0.0, both - around))

    def end(self):
        return self.film(self.loose() * self.along(max(self.end_land, self.clearance)))

    def loose(self):
        return 1 + 1.5 * self.eccentricity**2

    def rim(self):
        return np.pi * self.hole_diameter * self.clearance


IN, OUT = Spool(E["admission"], E["discharge"]), Spool(E["exhaust"], E["discharge"])
HOSE_C = 0.029 * E["hose_bore"] ** 2 / np.sqrt(E["hose_length"] / E["hose_bore"] ** 1.25 + 510)
HOSE_B = 474 * HOSE_C / E["hose_bore"] ** 2
PISTON_Z = E["piston_land"] / (np.pi * BORE * E["piston_gap"] ** 3) / 2.5
PISTON_A = np.pi * BORE * E["piston_gap"]
F = E["friction"]


def slopes(theta, y):
    """d/dθ of speed, chest mass and energy, cylinder mass and energy, time, indicated work, air taken in."""
    omega, mc, uc, mz, uz = y[:5]
    x, arm = travel(theta), lever(theta)
    volume = CLEARANCE + AREA * x
    pc, tc = (GAMMA - 1) * uc / CHEST, uc / (mc * CV)
    pz, tz = (GAMMA - 1) * uz / volume, uz / (mz * CV)
    hose, h_hose = two_way(lambda a, t, b: iso6358(HOSE_C, HOSE_B, a, t, b), PS, TS, pc, tc)
    shut_in, shut_out = IN.shut(theta), OUT.shut(theta)
    area_in, area_out = IN.area(theta), OUT.area(theta)
    into = [
        two_way(lambda a, t, b: nozzle(area_in, a, t, b), pc, tc, pz, tz),
        two_way(lambda a, t, b: gap(shut_in, IN.rim(), a, t, b), pc, tc, pz, tz),
    ]
    chest_out = [two_way(lambda a, t, b: gap(IN.end(), IN.rim(), a, t, b), pc, tc, P0, T0)]
    leave = [
        two_way(lambda a, t, b: nozzle(area_out, a, t, b), pz, tz, P0, T0),
        two_way(lambda a, t, b: gap(shut_out, OUT.rim(), a, t, b), pz, tz, P0, T0),
        two_way(lambda a, t, b: gap(IN.end(), IN.rim(), a, t, b), pz, tz, P0, T0),
        two_way(lambda a, t, b: gap(OUT.end(), OUT.rim(), a, t, b), pz, tz, P0, T0),
        two_way(lambda a, t, b: gap(PISTON_Z, PISTON_A, a, t, b), pz, tz, P0, T0),
    ]
    total = lambda flows, k: sum(flow[k] for flow in flows)
    wall = 2 * AREA + np.pi * BORE * (volume / AREA)
    heat = E["wall_coefficient"] * wall * (T0 - tz)
    power = pz * AREA * arm * omega
    dmc, duc = hose - total(into, 0) - total(chest_out, 0), h_hose - total(into, 1) - total(chest_out, 1)
    dmz, duz = total(into, 0) - total(leave, 0), total(into, 1) - total(leave, 1) - power + heat
    bearings = F["running"] + (F["breakaway"] - F["running"]) * np.exp(-((omega / F["stribeck"]) ** 2)) + F["viscous"] * omega
    piston = (F["piston"] + F["piston_pressure"] * abs(pz - P0)) * abs(arm)
    load = E["load_constant"] + E["load_per_rpm"] * omega * 30 / np.pi
    mass = E["reciprocating_mass"]
    torque = (pz - P0) * AREA * arm - mass * arm * bend(theta) * omega**2 - bearings - piston - E["drive_torque"] - load
    accel = torque / (E["inertia"] + mass * arm**2)
    return np.array([accel, dmc, duc, dmz, duz, 1.0, power, hose]) / omega


def turn(state):
    """One turn from top dead centre, broken where ports open and shut."""
    y = np.concatenate([state, np.zeros(3)])
    marks = {0.0, np.pi, TURN}
    for spool in (IN, OUT):
        for angle in (spool.begin, spool.begin + spool.length, spool.opens, spool.closes,
                      spool.begin + spool.flank, spool.begin + spool.length - spool.flank):
            marks.add(angle % TURN)
    marks = sorted(marks)
    scale = np.abs(y) + 1e-12
    for a, b in zip(marks[:-1], marks[1:]):
        if b - a < 1e-9:
            continue
        done = solve_ivp(slopes, (a, b), y, method="LSODA", rtol=1e-7, atol=1e-8 * scale + 1e-16, max_step=0.05)
        if not done.success:
            raise RuntimeError(done.message)
        y = done.y[:, -1]
        scale = np.maximum(scale, np.abs(y))
    return y


def gain(omega, gas):
    """Speed gained per turn at a starting speed, the gas brought to its own rhythm first."""
    for _ in range(40):
        after = turn(np.concatenate([[omega], gas]))
        change = np.max(np.abs(after[1:5] / gas - 1))
        gas = after[1:5]
        if change < 1e-6:
            break
    return after[0] - omega, gas, after


def main():
    room = P0 / (R * T0)
    full = PS / (R * TS)
    gas = np.array([full * CHEST, PS * CHEST / (GAMMA - 1), room * CLEARANCE * 2, P0 * CLEARANCE * 2 / (GAMMA - 1)])
    kept = {"gas": gas}

    def change(omega):
        value, kept["gas"], kept["after"] = gain(omega, kept["gas"])
        return value

    # Secant on the speed gained per turn.
    a, b = E["guess_speed"], 0.97 * E["guess_speed"]
    gained_a, gained_b = change(a), change(b)
    for _ in range(6):
        a, gained_a, b = b, gained_b, b - gained_b * (b - a) / (gained_b - gained_a)
        gained_b = change(b)
        if abs(b / a - 1) < 1e-4:
            break
    after = kept["after"]
    period, work, air = after[5:8]
    json.dump({"speed": TURN / period, "indicated_work": work, "air_per_turn": air, "air_mass_flow": air / period}, sys.stdout)


main()
