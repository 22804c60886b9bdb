"""Do the accelerations also satisfy Newton and Euler, body by body?

A second derivation by hand, against which vectors.py tests what Lagrange gave: the joint forces at ankle and axle
are worked out from rider and wheel, and six equations must then close. Works on floats and on mpmath numbers.
"""


def residuals(rig, state, rates, forces, gravity, functions):
    """Six left-overs, relative to the largest term in play: rider along the legs, rider turning, deck x, deck z,
    deck turning, wheel turning.

    `forces`: load N, tread T, legs F_l, feet tau_c, normal and along (unit vectors), rolling (moment on the wheel),
    motor (torque), push (horizontal force at the rider's centre of mass).
    """
    sin, cos = functions
    theta, phi, leg = state[3], state[4], state[5]
    theta_d, phi_d, leg_d = state[9], state[10], state[11]
    xdd, zdd, psi_dd, theta_dd, phi_dd, leg_dd = rates[6:12]

    def up(angle):
        return sin(angle), cos(angle)

    def ahead(angle):
        return cos(angle), -sin(angle)

    def swing(angle, rate, acceleration):
        """Second time derivative of up(angle) and of ahead(angle)."""
        (u_x, u_z), (e_x, e_z) = up(angle), ahead(angle)
        return (
            (acceleration * e_x - rate**2 * u_x, acceleration * e_z - rate**2 * u_z),
            (-acceleration * u_x - rate**2 * e_x, -acceleration * u_z - rate**2 * e_z),
        )

    def moment(arm, force):
        """Turning in the sense of rolling forward."""
        return arm[1] * force[0] - arm[0] * force[1]

    deck_up, deck_ahead = swing(theta, theta_d, theta_dd)
    body_up, _ = swing(phi, phi_d, phi_dd)
    u_t, e_t, u_p, e_p = up(theta), ahead(theta), up(phi), ahead(phi)
    a, b, ankle = rig["deckForwardM"], rig["deckAboveAxleM"], rig["ankleAboveAxleM"]
    m, m_d, m_w = rig["riderMassKg"], rig["deckMassKg"], rig["wheelMassKg"]
    axle_acc = (xdd, zdd)
    deck_acc = [axle_acc[i] + a * deck_ahead[i] + b * deck_up[i] for i in (0, 1)]
    rider_acc = [
        axle_acc[i] + ankle * deck_up[i] + leg_dd * u_p[i] + 2 * leg_d * phi_d * e_p[i] + leg * body_up[i]
        for i in (0, 1)
    ]

    # force of the deck on the rider at the ankle, force of the wheel on the deck at the axle
    at_ankle = (m * rider_acc[0] - forces["push"], m * (rider_acc[1] + gravity))
    road = [forces["N"] * forces["normal"][i] + forces["T"] * forces["along"][i] for i in (0, 1)]
    at_axle = (road[0] - m_w * xdd, road[1] - m_w * (zdd + gravity))

    ankle_arm = [-leg * u_p[i] for i in (0, 1)]
    deck_to_axle = [-a * e_t[i] - b * u_t[i] for i in (0, 1)]
    deck_to_ankle = [deck_to_axle[i] + ankle * u_t[i] for i in (0, 1)]
    minus = (-at_ankle[0], -at_ankle[1])
    left = (
        at_ankle[0] * u_p[0] + at_ankle[1] * u_p[1] - forces["F_l"],
        rig["riderInertiaKgM2"] * phi_dd - forces["tau_c"] - moment(ankle_arm, at_ankle),
        m_d * deck_acc[0] + at_ankle[0] - at_axle[0],
        m_d * (deck_acc[1] + gravity) + at_ankle[1] - at_axle[1],
        rig["deckInertiaKgM2"] * theta_dd
        + forces["motor"]
        + forces["tau_c"]
        - moment(deck_to_ankle, minus)
        - moment(deck_to_axle, at_axle),
        rig["wheelInertiaKgM2"] * psi_dd - forces["motor"] - forces["rolling"] + rig["wheelRadiusM"] * forces["T"],
    )
    scale = max(abs(v) for v in (*at_ankle, *at_axle, forces["motor"], forces["tau_c"], m * gravity))
    return [v / scale for v in left]
