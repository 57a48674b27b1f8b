"""stub"""
def map_svg(trace, options):
    """stub"""
    raise NotImplementedError
def map_pdf(trace, options):
    """stub"""
    raise NotImplementedError
